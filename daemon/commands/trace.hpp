// One event on its way through the step, stage by stage: a newcomer's first page.
#pragma once

#include <string>

#include "core/room/room.hpp"

namespace tidewright::commands {

// Lets water touch the room's first leak sensor while a fill runs, and tells what each stage made
// of that one report. A sentence that says so if the room has no leak sensor.
std::string trace_leak(const room::Room& room);

}  // namespace tidewright::commands
