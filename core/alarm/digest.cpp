#include "core/alarm/digest.hpp"

#include <algorithm>

#include "core/alarm/tell.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::alarm {
namespace {

using namespace std::chrono_literals;

constexpr Duration week = 7 * 24h;
constexpr Duration morning = 8h;  // of the household's own day: nobody is woken by it
constexpr Duration evening = 21h;

// The same instant, or the next morning.
Instant by_day(Instant at, const WallClock& wall) {
  const Duration of_day = time_of_day(at, wall);
  if (of_day < morning) return at + (morning - of_day);
  return of_day < evening ? at : at + (24h + morning - of_day);
}

bool is_reason(const std::optional<Listed>& why) { return why && *why != Listed::out_of_service; }

bool anything(const state::Alarms& alarms, const state::Latches& latches, Instant now) {
  return std::any_of(rules::catalogue.begin(), rules::catalogue.end(), [&](const rules::Rule* it) {
    return is_reason(listed(*it, alarms[it->id], latches[it->id].set, now));
  });
}

void remind(const state::Latches& latches, Instant now, state::Alarms& alarms) {
  for (const rules::Rule* rule : rules::catalogue) {
    state::Alarm& alarm = alarms[rule->id];
    const auto why = listed(*rule, alarm, latches[rule->id].set, now);
    const bool low = rule->priority == rules::Priority::days;
    if (low && why && *why <= Listed::standing) alarm.acknowledged = false;
  }
}

}  // namespace

std::optional<Listed> listed(const rules::Rule& rule, const state::Alarm& alarm, bool latched,
                             Instant now) {
  const bool stands = alarm.active || latched;
  switch (alarm.suppression) {
    case state::Suppression::by_design:
      return std::nullopt;  // its root is told
    case state::Suppression::shelved:
      return Listed::hidden;
    case state::Suppression::out_of_service:
      return stands ? Listed::hidden : Listed::out_of_service;
    case state::Suppression::none:
      break;
  }
  if (!stands) return std::nullopt;
  const auto priority = rules::priority_of(rule, alarm.why);
  if (now - alarm.since >= rules::stale_after(priority)) return Listed::stale;
  if (priority == rules::Priority::days) return Listed::standing;
  return std::nullopt;
}

void digest(const state::Latches& latches, const state::Circumstances& known, Litres made,
            state::Alarms& alarms, state::Digest& digest, Effects& effects, Wake& wake) {
  const Instant now = known.now;
  if (digest.told == long_ago) {
    digest.told = now;
    digest.made_until_then = made;
    persist(effects);
  }
  const Instant due = by_day(digest.told + week, known.wall);
  if (now < due) return wake.by(due);
  if (!known.link_up) return;  // the line's return is an event
  const bool something = anything(alarms, latches, now);
  digest.told = now;
  digest.made = made - digest.made_until_then;
  digest.made_until_then = made;
  persist(effects);
  if (something) {
    remind(latches, now, alarms);
    effects.push(Announcement{{}, 0, Announced::digest, {}});
  }
  wake.by(by_day(now + week, known.wall));
}

}  // namespace tidewright::alarm
