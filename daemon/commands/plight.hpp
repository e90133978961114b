// Leads a room into an alarm, one event after the other, so that `explain --trace` can show the
// event with which it came. Nothing of the real room is used but its file.
#pragma once

#include <functional>
#include <optional>

#include "core/step.hpp"

namespace tidewright::commands {

// The step in which the alarm was found.
struct Plight {
  State before;
  Event event;
  State after;
  Effects effects;
};

// Lives through what such an alarm comes of, four days at most; none if it does not come in this
// room even so. The rule applies to the room.
std::optional<Plight> lead_into(const room::Room& room, room::RuleId alarm);

}  // namespace tidewright::commands
