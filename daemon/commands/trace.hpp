// One event on its way through the step, stage by stage: a newcomer's first page.
#pragma once

#include <string>

#include "core/room/room.hpp"

namespace tidewright::commands {

// Leads the room into that alarm while a fill runs, and tells what each stage made of the event
// with which it came. A sentence that says so if the room has nothing to notice it by.
std::string trace(const room::Room& room, room::RuleId alarm);

}  // namespace tidewright::commands
