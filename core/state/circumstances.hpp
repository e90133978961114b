// What the daemon said of itself: the link, the start, the clock, the disk.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

struct Circumstances {
  Instant now = long_ago;  // of the latest event
  WallClock wall;
  bool link_up = false;
  Instant link_since = long_ago;     // of the present up or down
  Instant unheard_since = long_ago;  // what was said between this and the link's return is lost
  Instant started = long_ago;
  bool unclean = false;     // the run before ended without notice
  bool unreadable = false;  // and what it had recorded could not be read
  Duration away{0};
  bool recording = true;  // the disk takes what it is given
  bool stopping = false;
  std::array<std::uint8_t, room::actuators_max>
      delivery{};  // broker's code for each actuator's last command
};

}  // namespace tidewright::state
