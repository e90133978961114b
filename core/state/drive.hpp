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
  bool on = false;                  // the last command
  bool obeyed = false;              // since that command the feedback has agreed with it once
  bool wanted = false;              // the procedure wants it ON
  bool held = false;                // something forbids ON, or ends it
  bool may_start = false;           // nothing stands against it, not even against a start
  Reason why;                       // of the want, or of what holds it
  Instant commanded = long_ago;     // when `on` last changed, or was commanded anew after a start
  Instant sent = long_ago;          // when a command was last published
  std::uint8_t resent = 0;          // times OFF was repeated since then
  std::uint8_t ignored = 0;         // runs in a row that the feedback never confirmed
  std::array<Instant, 6> starts{};  // newest first
};

using Drives = std::array<Drive, room::actuators_max>;

}  // namespace tidewright::state
