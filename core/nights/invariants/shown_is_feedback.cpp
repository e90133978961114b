#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

const report::Value* find(const report::Report& report, const std::string& id) {
  for (const report::Thing& thing : report.things) {
    if (thing.kind != "actuator" || thing.id != id) continue;
    for (const report::Field& field : thing.fields) {
      if (field.name == "confirmed") return &field.value;
    }
  }
  return nullptr;
}

Complaint judge(const Moment& moment, const report::Report& report) {
  for (std::size_t n = 0; n < moment.room.actuators.size(); ++n) {
    const std::string& id = moment.room.actuators[n].id;
    const report::Value* shown = find(report, id);
    if (shown == nullptr) return id + " is not shown";
    const auto i = static_cast<room::ActuatorIndex>(n);
    const auto feedback = room::find(moment.room, room::Quantity::feedback, i);
    const bool* says = std::get_if<bool>(shown);
    if (says == nullptr) {
      const bool sure = feedback && moment.witness.fresh(*feedback) &&
                        moment.witness.heard[*feedback].nonsense_in_a_row == 0;
      if (sure) return id + " is not known, and its feedback was heard";
      continue;
    }
    if (!feedback || !moment.witness.fresh(*feedback)) return id + " is known without feedback";
    if (*says != (moment.witness.heard[*feedback].value >= 0.5)) {
      return id + " is shown otherwise than its feedback said";
    }
  }
  return std::nullopt;
}

}  // namespace

extern const Invariant shown_is_feedback{
    .number = 12,
    .name = "shown_is_feedback",
    .sentence = "what is shown of an actuator is its last good feedback, or that nothing is known",
    .of_report = judge};

}  // namespace tidewright::nights
