#include "core/alarm/tell.hpp"

#include <algorithm>

namespace tidewright::alarm {

void persist(Effects& effects) {
  const bool asked = std::any_of(effects.begin(), effects.end(), [](const Effect& effect) {
    return std::holds_alternative<Persist>(effect);
  });
  if (!asked) effects.push(Persist{});
}

void announce(room::RuleId id, state::Alarm& alarm, Announced event, Instant now,
              Effects& effects) {
  persist(effects);
  effects.push(Announcement{id, alarm.occurrence, event, alarm.why});
  alarm.announced = now;
}

}  // namespace tidewright::alarm
