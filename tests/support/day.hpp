// A day on which everything happens, as the events that step() sees: for counting and measuring.
#pragma once

#include <vector>

#include "core/event.hpp"
#include "core/room/room.hpp"

namespace tidewright::support {

// Of a room like full_room(): fills, a leak, lost and garbled sensors, a welded relay, a broker
// that goes, a crash, every ask. In order; beginning with Started.
std::vector<Event> eventful_day(const room::Room&);

}  // namespace tidewright::support
