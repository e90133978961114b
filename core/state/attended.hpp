// A person's run of one actuator, for so many minutes. What make_water drives has none.
// Written by procedure/attended only.
#pragma once

#include <array>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

struct Attended {
  Instant since = long_ago;
  Instant until = long_ago;                    // not after now: no run is asked for
  Reason why{Why::no_demand, no_subject, {}};  // of the run, or of its end
};

using AttendedRuns = std::array<Attended, room::actuators_max>;

}  // namespace tidewright::state
