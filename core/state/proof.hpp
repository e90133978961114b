// When each protection was last tried for real, and what came of it. Written by ledger/proof only.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

struct Proof {
  Instant at = long_ago;  // long_ago: never done
  bool passed = false;
  float figure = 0;  // seconds from demand to OFF; litres that came of those expected
};

// A leak sensor that got wet, or a high-high switch that was lifted: whether as a test, a person
// tells afterwards.
struct Trial {
  room::InstrumentIndex instrument = no_subject;
  Instant demanded = long_ago;
  bool running = false;  // something that moves water was on
  Instant off = never;   // when all of it said OFF
};

struct Proofs {
  Instant installed = long_ago;  // the first start of all
  std::array<Proof, room::instruments_max> instruments{};
  Proof gauge;  // against the metered volume of a fill
  Trial trial;
};

}  // namespace tidewright::state
