#include "core/nights/fault.hpp"

#include <algorithm>

#include "core/room/cause.hpp"

namespace tidewright::nights {
std::vector<const FaultKind*> fault_kinds() {
  std::vector<const FaultKind*> all;
  for (const auto rows :
       {faults_of_broker(), faults_of_messages(), faults_of_instruments(), faults_of_plugs(),
        faults_of_process(), faults_of_water(), acts_of_persons()}) {
    for (const FaultKind& kind : rows) all.push_back(&kind);
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const FaultKind* a, const FaultKind* b) { return a->number < b->number; });
  return all;
}

const FaultKind* fault_kind_named(std::string_view name) {
  for (const FaultKind* kind : fault_kinds()) {
    if (kind->name == name) return kind;
  }
  return nullptr;
}

bool fits(const FaultKind& kind, const room::Room& room, std::uint8_t subject) {
  switch (kind.subject) {
    case Subject::none:
      return subject == no_subject;
    case Subject::actuator:
      return subject < room.actuators.size();
    case Subject::run:
      return subject < room.actuators.size() &&
             !room::facts(room.actuators[subject].role).makes_water;
    case Subject::alarm:
      return subject < room::rule_count;
    case Subject::cause:
      return subject < room::cause_count;
    case Subject::instrument:
      return subject < room.instruments.size();
    case Subject::announced:
      return subject < room.instruments.size() && room.instruments[subject].has_availability;
    case Subject::leak_sensor:
      return subject < room.instruments.size() &&
             room.instruments[subject].quantity == room::Quantity::wetness;
    case Subject::gauge:
      return subject < room.instruments.size() &&
             room.instruments[subject].quantity == room::Quantity::level;
  }
  return false;
}

std::vector<std::uint8_t> subjects(const FaultKind& kind, const room::Room& room) {
  std::vector<std::uint8_t> fitting;
  if (kind.subject == Subject::none) return {no_subject};
  for (std::uint8_t i = 0; i < no_subject; ++i) {
    if (fits(kind, room, i)) fitting.push_back(i);
  }
  return fitting;
}

}  // namespace tidewright::nights
