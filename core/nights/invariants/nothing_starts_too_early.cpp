#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;
using room::CauseId;

constexpr Duration after_unclean_start = 5min;

Complaint frost(const Scene& scene) {
  if (!scene.room.purifier || scene.witness.bypassed(CauseId::frost)) return std::nullopt;
  return for_each_instrument(
      scene.room, room::Quantity::temperature, [&](room::InstrumentIndex i) -> Complaint {
        if (scene.room.instruments[i].place == room::Place::mixing_vat) return std::nullopt;
        const Heard& heard = scene.witness.heard[i];
        const bool cold = heard.live_in_a_row >= 1 && scene.witness.fresh(i) &&
                          heard.value < scene.room.purifier->frost_below.value &&
                          heard.value >= scene.room.instruments[i].plausible_low;
        if (!cold || heard.nonsense_in_a_row > 0) return std::nullopt;
        return fmt::format("{} says {:.1f} degrees", scene.room.instruments[i].id, heard.value);
      });
}

Complaint limits(const Scene& scene, room::ActuatorIndex i) {
  const room::Actuator& actuator = scene.room.actuators[i];
  const Ordered& before = scene.before.ordered[i];
  const Witness& witness = scene.witness;
  if (witness.now - before.since < actuator.off_shortest) return "it had no rest";
  const auto nth = static_cast<std::size_t>(actuator.starts_per_hour_max);
  if (nth >= 1 && nth <= before.starts.size() && before.starts[nth - 1] != long_ago &&
      witness.now - before.starts[nth - 1] < 1h) {
    return "it has started too often in this hour";
  }
  if (!witness.clean_start && witness.now - witness.started < after_unclean_start &&
      !witness.bypassed(CauseId::after_unclean_start)) {
    return "the start was unclean";
  }
  if (actuator.lease_kind == room::LeaseKind::none && fills(actuator.role) &&
      !scene.somebody_is_there()) {
    return "nobody keeps its lease, and nobody is there";
  }
  return std::nullopt;
}

Complaint judge(const Scene& scene) {
  return for_each_actuator(scene.room, moves_water, [&](room::ActuatorIndex i) -> Complaint {
    if (!starts(scene, i)) return std::nullopt;
    Complaint why = limits(scene, i);
    if (!why && scene.room.actuators[i].role != room::Role::transfer_pump) why = frost(scene);
    if (!why) return std::nullopt;
    return fmt::format("{} is switched ON although {}", scene.room.actuators[i].id, *why);
  });
}

}  // namespace

extern const Invariant nothing_starts_too_early{
    .number = 1,
    .name = "nothing_starts_too_early",
    .sentence =
        "no start in frost, without rest, too often, within 5 min of an unclean start, or "
        "unattended where nobody keeps the lease",
    .after_step = judge};

}  // namespace tidewright::nights
