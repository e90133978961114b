// The one latch per rule. Set by the interlock, cleared only by a person's confirmed reset.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/room/rule.hpp"

namespace tidewright::state {

struct Latch {
  bool set = false;
  bool first = false;  // the first cause of the standing trips
  Instant since = long_ago;
  Reason cause;                    // as it was when it tripped
  bool stands = false;             // its cause stood in the step before
  std::array<Instant, 5> stops{};  // when its cause stopped a running actuator, newest first
};

// A reset that was asked for and waits for its token.
struct Armed {
  bool armed = false;
  room::RuleId alarm{};
  std::uint32_t token = 0;
  Instant at = long_ago;
  std::uint8_t wrong_tries = 0;
};

using Latches = room::PerRule<Latch>;

}  // namespace tidewright::state
