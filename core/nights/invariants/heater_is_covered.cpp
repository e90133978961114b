#include "core/nights/invariants/judging.hpp"
#include "core/nights/invariants/way_to_off.hpp"

namespace tidewright::nights {
namespace {

using room::Role;

std::optional<room::InstrumentIndex> gauge_of(const room::Room& room) {
  return room::find(room, room::Quantity::level, room::Place::mixing_vat);
}

bool stands_in_the_mixing_vat(Role role) {
  return role == Role::heater || role == Role::mixing_pump;
}

Complaint uncovered(const Scene& scene, Role role) {
  const auto gauge = gauge_of(scene.room);
  if (!gauge) return role == Role::heater ? Complaint{"there is no gauge"} : std::nullopt;
  if (role == Role::heater && !scene.witness.fresh(*gauge)) {
    return "the mixing vat's gauge is not to be relied upon";
  }
  // A single leap may be passed over; two words in a row may not.
  const Heard& heard = scene.witness.heard[*gauge];
  const auto& vat = scene.room.mixing_vat;
  const double low = vat && vat->low ? vat->low->value : 0;
  const bool may_leap = scene.room.instruments[*gauge].per_second_max > 0;
  if (!heard.ever || heard.value >= low || (may_leap && heard.before >= low)) return std::nullopt;
  return fmt::format("the gauge says {:.1f} L and low is {:.1f} L", heard.value, low);
}

Complaint judge_orders(const Scene& scene) {
  return for_each_actuator(
      scene.room, stands_in_the_mixing_vat, [&](room::ActuatorIndex i) -> Complaint {
        if (!scene.witness.ordered[i].on) return std::nullopt;
        const Complaint why = uncovered(scene, scene.room.actuators[i].role);
        if (!why) return std::nullopt;
        return fmt::format("{} is ordered ON although {}", scene.room.actuators[i].id, *why);
      });
}

// The harm itself. Only an honest gauge can tell of it.
Complaint judge_truth(const Moment& moment) {
  const Witness& witness = moment.witness;
  const auto heater = room::find(moment.room, Role::heater);
  const auto gauge = gauge_of(moment.room);
  if (witness.bare_since == never || !heater || !gauge) return std::nullopt;
  const Instant closed = witness.on_since[*heater];
  if (closed == never) return std::nullopt;
  const Instant since = std::max(witness.bare_since, closed);
  if (moment.room.actuators[*heater].lease_kind == room::LeaseKind::none ||
      excused(moment, Excuse::deceives, *gauge, since) || stays_on(moment, *heater, since)) {
    return std::nullopt;
  }
  const Duration lasted = witness.now - since;
  const Duration bound =
      room::stale_after(moment.room.instruments[*gauge]) + lease_to_off(moment, *heater, since);
  if (lasted <= bound) return std::nullopt;
  return fmt::format("the heater was bare and ON for {:.0f} s; {:.0f} s are allowed",
                     seconds(lasted), seconds(bound));
}

}  // namespace

extern const Invariant heater_is_covered{
    .number = 8,
    .name = "heater_is_covered",
    .sentence =
        "no heater without water over it by a gauge to rely upon, no mixing pump below low; in "
        "truth none for longer than the gauge's silence, the lease, one pass and the delivery",
    .after_step = judge_orders,
    .at_any_time = judge_truth};

}  // namespace tidewright::nights
