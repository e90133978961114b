#include "core/alarm/alarm_state.hpp"
#include "core/interlock/arming.hpp"
#include "core/report/fields.hpp"
#include "core/report/phrases.hpp"
#include "core/report/things.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::report {

Thing alarm(const room::Room& room, const State& state, room::RuleId id) {
  const rules::Rule& rule = rules::rule(id);
  const state::Alarm& alarm = state.alarms[id];
  const state::Latch& latch = state.latches[id];
  const bool came = alarm.occurrence > 0;
  const Reason& why = latch.set ? latch.cause : alarm.why;
  Fields fields{"alarm", std::string(rule.name)};
  fields.add("title", std::string(rule.title))
      .add("state", std::string(alarm::name(alarm::state_of(alarm, latch.set))))
      .add("active", alarm.active)
      .add("latched", latch.set)
      .add("reset_armed",
           latch.set && interlock::reset_is_armed(state.armed, id, state.circumstances.now))
      .add("first_cause", latch.first)
      .add("to_acknowledge", came && !alarm.acknowledged)
      .add("priority", static_cast<double>(rules::priority_of(rule, alarm.why)), 0)
      .add("occurrence", static_cast<double>(alarm.occurrence), 0)
      .add_if("since",
              came ? std::optional{wall_time(alarm.since, state.circumstances.wall)} : std::nullopt,
              "it has not come yet")
      .add("why", came ? words(room, why) : std::string{})
      .add("cause", std::string(rule.record.causes))
      .add("consequence", std::string(rule.record.consequence))
      .add("action", std::string(rule.record.action))
      .add("respond_within_min", seconds(rule.respond_within) / 60, 0);
  if (alarm.suppression == state::Suppression::shelved) {
    fields.add("shelved_until", wall_time(alarm.shelved_until, state.circumstances.wall));
  }
  return fields.done();
}

}  // namespace tidewright::report
