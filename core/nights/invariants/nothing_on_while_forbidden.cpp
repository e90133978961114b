#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

// What was delivered and forbids this role, in words; or nothing.
Complaint forbidden(const Scene& scene, room::Role role) {
  const Witness& witness = scene.witness;
  for (std::size_t i = 0; i < room::rule_count; ++i) {
    if (state::holds(scene.state.latches.items[i], role)) return fmt::format("latch {} is set", i);
  }
  for (std::size_t n = 0; n < scene.room.instruments.size(); ++n) {
    const auto i = static_cast<room::InstrumentIndex>(n);
    const room::Instrument& instrument = scene.room.instruments[i];
    const bool is_leak = instrument.quantity == room::Quantity::wetness;
    const bool is_high_high = instrument.place == room::Place::vat_high_high;
    if (!is_leak && !(is_high_high && fills(role))) continue;
    if (!witness.fresh(i)) return instrument.id + " is not to be relied upon";
    const auto delay = is_leak ? room::RuleId::leak : room::RuleId::vat_high_high;
    const bool stood =
        witness.now - witness.heard[i].same_since >= scene.room.rules[delay].on_delay;
    if (witness.heard[i].value >= 0.5 && stood) return instrument.id + " said yes";
  }
  return std::nullopt;
}

Complaint judge(const Scene& scene) {
  return for_each_actuator(scene.room, moves_water, [&](room::ActuatorIndex i) -> Complaint {
    if (!scene.witness.ordered[i].on) return std::nullopt;
    const Complaint why = forbidden(scene, scene.room.actuators[i].role);
    if (!why) return std::nullopt;
    return fmt::format("{} stays ordered ON although {}", scene.room.actuators[i].id, *why);
  });
}

}  // namespace

extern const Invariant nothing_on_while_forbidden{
    .number = 1,
    .name = "nothing_on_while_forbidden",
    .sentence = "no ON and no renewal while a trip stands or a protection is not there",
    .after_step = judge};

}  // namespace tidewright::nights
