#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using room::Place;
using room::Quantity;

Complaint full(const Scene& scene) {
  const Witness& witness = scene.witness;
  if (const auto gauge = room::find(scene.room, Quantity::level, Place::vat)) {
    const Heard& heard = witness.heard[*gauge];
    if (!witness.fresh(*gauge)) return "the gauge is not to be relied upon";
    // A single leap may be passed over; two words in a row may not.
    const double stop = scene.room.vat->stop_at.value_or(Litres{1e9}).value;
    const bool may_leap = scene.room.instruments[*gauge].per_second_max > 0;
    if (heard.value >= stop && (heard.before >= stop || !may_leap)) {
      return fmt::format("the gauge says {:.1f} L and STOP is {:.1f} L", heard.value, stop);
    }
  }
  if (const auto full_switch = room::find(scene.room, Quantity::float_switch, Place::vat)) {
    if (!witness.fresh(*full_switch)) return "the float switch is not to be relied upon";
    if (witness.heard[*full_switch].value >= 0.5) return "the float switch says full";
  }
  return std::nullopt;
}

Complaint judge(const Scene& scene) {
  if (!scene.room.vat) return std::nullopt;
  return for_each_actuator(scene.room, fills, [&](room::ActuatorIndex i) -> Complaint {
    if (!scene.witness.ordered[i].on) return std::nullopt;
    const Complaint why = full(scene);
    if (!why) return std::nullopt;
    return fmt::format("{} is ordered ON although {}", scene.room.actuators[i].id, *why);
  });
}

}  // namespace

extern const Invariant fill_ends_at_stop{
    .number = 7,
    .name = "fill_ends_at_stop",
    .sentence = "no filling at STOP or above, nor without a gauge and a float switch to rely upon",
    .after_step = judge};

}  // namespace tidewright::nights
