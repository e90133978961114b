#include "core/alarm/alarm_state.hpp"

namespace tidewright::alarm {

AlarmState state_of(const state::Alarm& alarm, bool latched) {
  switch (alarm.suppression) {
    case state::Suppression::shelved:
      return AlarmState::shelved;
    case state::Suppression::by_design:
      return AlarmState::suppressed;
    case state::Suppression::out_of_service:
      return AlarmState::out_of_service;
    case state::Suppression::none:
      break;
  }
  const bool seen = alarm.acknowledged;
  if (alarm.active) return seen ? AlarmState::acknowledged : AlarmState::unacknowledged;
  if (latched) return seen ? AlarmState::latched_acknowledged : AlarmState::latched_unacknowledged;
  return seen ? AlarmState::normal : AlarmState::returned_unacknowledged;
}

std::string_view name(AlarmState state) {
  switch (state) {
    case AlarmState::normal:
      return "normal";
    case AlarmState::unacknowledged:
      return "unacknowledged";
    case AlarmState::acknowledged:
      return "acknowledged";
    case AlarmState::returned_unacknowledged:
      return "returned_unacknowledged";
    case AlarmState::latched_unacknowledged:
      return "latched_unacknowledged";
    case AlarmState::latched_acknowledged:
      return "latched_acknowledged";
    case AlarmState::shelved:
      return "shelved";
    case AlarmState::suppressed:
      return "suppressed";
    case AlarmState::out_of_service:
      return "out_of_service";
  }
  return "";
}

}  // namespace tidewright::alarm
