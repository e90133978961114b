// What the daemon has commanded of one actuator, and what came back.
// Command and feedback are two values; what is shown is the feedback.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

struct Drive {
  bool on = false;                  // last command
  Reason why;                       // why it is as it is: the want, or what holds it back
  bool wanted = false;              // what the procedure asked for in this pass
  bool held = false;                // something forbids ON
  Instant commanded = long_ago;     // when `on` last changed
  Instant sent = long_ago;          // when a command was last published
  std::uint8_t resent = 0;          // OFF commands since feedback should have said OFF
  std::uint8_t retries = 0;         // ON commands not obeyed
  std::array<Instant, 6> starts{};  // newest first
};

using Drives = std::array<Drive, room::actuators_max>;

}  // namespace tidewright::state
