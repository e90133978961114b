#include "core/alarm/flood.hpp"

#include <algorithm>

#include "core/alarm/tell.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::alarm {
namespace {

// Half of what EEMUA publication 191 (from memory) calls a flood to an operator: this is a home.
constexpr int flood_at = 5;

bool is_kept_back(const state::Alarm& alarm) {
  return alarm.active && !alarm.acknowledged && alarm.announced == long_ago && !alarm.chattering &&
         alarm.suppression == state::Suppression::none;
}

// The oldest of the new ones; of two in one step, the first in the catalogue.
room::RuleId first_of(const state::Alarms& alarms, Instant now) {
  const rules::Rule* first = nullptr;
  for (const rules::Rule* rule : rules::catalogue) {
    if (!is_new(alarms[rule->id], now)) continue;
    if (first == nullptr || alarms[rule->id].since < alarms[first->id].since) first = rule;
  }
  return first->id;
}

}  // namespace

bool is_new(const state::Alarm& alarm, Instant now) {
  return alarm.since != long_ago && now - alarm.since < flood_within;
}

bool flooding(const state::Alarms& alarms, Instant now) {
  return std::count_if(alarms.items.begin(), alarms.items.end(),
                       [now](const state::Alarm& alarm) { return is_new(alarm, now); }) >= flood_at;
}

void tell_kept_back(state::Alarms& alarms, state::Flood& flood, Instant now, Effects& effects,
                    Wake& wake) {
  if (std::none_of(alarms.items.begin(), alarms.items.end(), is_kept_back)) return;
  const bool as_one = flooding(alarms, now);
  const Instant due = flood.told == long_ago ? now : flood.told + flood_within;
  if (as_one && now < due) return wake.by(due);
  if (as_one) {
    const room::RuleId first = first_of(alarms, now);
    persist(effects);
    effects.push(
        Announcement{first, alarms[first].occurrence, Announced::summary, alarms[first].why});
    flood.told = now;
  }
  for (const rules::Rule* rule : rules::catalogue) {
    state::Alarm& alarm = alarms[rule->id];
    if (!is_kept_back(alarm)) continue;
    if (as_one) {
      alarm.announced = now;
    } else {
      announce(rule->id, alarm, Announced::raised, now, effects);
    }
  }
}

}  // namespace tidewright::alarm
