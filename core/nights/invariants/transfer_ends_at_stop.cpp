#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

Complaint full(const Scene& scene) {
  const auto gauge = room::find(scene.room, room::Quantity::level, room::Place::mixing_vat);
  if (!gauge) return std::nullopt;
  const Heard& heard = scene.witness.heard[*gauge];
  if (!scene.witness.fresh(*gauge)) return "the mixing vat's gauge is not to be relied upon";
  // A single leap may be passed over; two words in a row may not.
  const double stop = scene.room.mixing_vat->stop_at.value_or(Litres{1e9}).value;
  const bool may_leap = scene.room.instruments[*gauge].per_second_max > 0;
  if (heard.value < stop || (may_leap && heard.before < stop)) return std::nullopt;
  return fmt::format("the mixing vat's gauge says {:.1f} L and its stop is {:.1f} L", heard.value,
                     stop);
}

Complaint judge(const Scene& scene) {
  const auto transfer = room::find(scene.room, room::Role::transfer_pump);
  if (!scene.room.mixing_vat || !transfer) return std::nullopt;
  if (!scene.witness.ordered[*transfer].on) return std::nullopt;
  const Complaint why = full(scene);
  if (!why) return std::nullopt;
  return fmt::format("{} is ordered ON although {}", scene.room.actuators[*transfer].id, *why);
}

}  // namespace

extern const Invariant transfer_ends_at_stop{
    .number = 7,
    .name = "transfer_ends_at_stop",
    .sentence =
        "no transfer into the mixing vat at its stop or above, nor without a gauge to rely upon",
    .after_step = judge};

}  // namespace tidewright::nights
