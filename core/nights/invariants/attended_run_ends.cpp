#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

Complaint judge(const Scene& scene) {
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
    .sentence = "a run that a person asked for ends with its minutes",
    .after_step = judge};

}  // namespace tidewright::nights
