#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

bool is_started_by_name(room::Role role) { return !room::facts(role).makes_water; }

Complaint judge_runs(const Scene& scene) {
  return for_each_actuator(scene.room, is_started_by_name, [&](room::ActuatorIndex i) -> Complaint {
    const bool asked = scene.witness.now < scene.witness.run_until[i];
    if (!scene.witness.ordered[i].on || asked || scene.tested_by_person(i)) return std::nullopt;
    return scene.room.actuators[i].id + " is ordered ON, and nobody asked for that";
  });
}

Complaint judge(const Scene& scene) {
  if (auto complaint = judge_runs(scene)) return complaint;
  if (!scene.attended() || scene.witness.now < scene.witness.attended_until) return std::nullopt;
  return for_each_actuator(scene.room, fills, [&](room::ActuatorIndex i) -> Complaint {
    if (!scene.witness.ordered[i].on) return std::nullopt;
    return scene.room.actuators[i].id + " is ordered ON after the minutes that were asked for";
  });
}

}  // namespace

extern const Invariant attended_run_ends{
    .number = 6,
    .name = "attended_run_ends",
    .sentence =
        "a run that a person asked for ends with its minutes; what only persons start runs "
        "for no longer",
    .after_step = judge};

}  // namespace tidewright::nights
