// When each protection was last tried for real, and what came of it. Written by ledger/proof only,
// but for leases, which are state/lease_test's.
#pragma once

#include <array>

#include "core/base/instant.hpp"
#include "core/base/units.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

struct Proof {
  Instant at = long_ago;  // long_ago: never done
  bool passed = false;
  float figure = 0;  // what was measured; its unit is the test's own
};

constexpr bool has_failed(const Proof& proof) { return proof.at != long_ago && !proof.passed; }

// A leak sensor that got wet, or a high-high switch that was lifted, while water moved: whether as
// a test, a person tells afterwards.
struct Trial {
  room::InstrumentIndex instrument = no_subject;
  Instant demanded = long_ago;
  Instant off = never;  // when all that moves water said OFF
};

// A fill whose water a meter counts.
struct MeteredFill {
  bool under_way = false;
  Litres passed;  // by the meter, when it began
  Litres gained;  // and by the gauge
};

struct Proofs {
  Instant installed = long_ago;                            // the first start of all
  std::array<Proof, room::instruments_max> instruments{};  // seconds from demand to OFF
  Proof gauge;  // litres that the gauge gained in a fill, of those metered
  Proof valve;  // litres per hour that still flow after everything was switched off
  Trial trial;
  MeteredFill fill;
};

}  // namespace tidewright::state
