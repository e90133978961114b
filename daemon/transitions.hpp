// What the log says of the room: what an actuator was told, and why. Alarms speak for themselves
// by their announcements.
#pragma once

#include <string>
#include <vector>

#include "core/room/room.hpp"
#include "core/state/state.hpp"

namespace tidewright {

std::vector<std::string> transitions(const room::Room& room, const State& before,
                                     const State& after);

}  // namespace tidewright
