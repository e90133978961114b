#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using room::CauseId;

// Silence of a leak sensor or of the highest float switch that a person has bypassed; one that was
// heard since the line came back is not awaited any more, but lost.
bool silence_bypassed(const Witness& witness, room::InstrumentIndex i, bool is_leak) {
  if (!is_leak) return witness.bypassed(CauseId::high_high_lost);
  const bool awaited = !witness.heard[i].live && witness.bypassed(CauseId::leak_sensor_awaited);
  return awaited || witness.bypassed(CauseId::leak_sensor_lost);
}

bool a_lease_has_failed(const Scene& scene) {
  for (std::size_t n = 0; n < scene.room.actuators.size(); ++n) {
    if (fills(scene.room.actuators[n].role) &&
        state::has_failed(scene.state.lease_tests.results[n]))
      return true;
  }
  return false;
}

// What was delivered and forbids this role, in words; or nothing.
Complaint forbidden(const Scene& scene, room::Role role) {
  const Witness& witness = scene.witness;
  for (std::size_t i = 0; i < room::rule_count; ++i) {
    if (state::holds(scene.state.latches.items[i], role)) return fmt::format("latch {} is set", i);
  }
  if (fills(role) && !scene.somebody_is_there() && a_lease_has_failed(scene)) {
    return "a lease was not kept when it was tried, and nobody is there";
  }
  for (std::size_t n = 0; n < scene.room.instruments.size(); ++n) {
    const auto i = static_cast<room::InstrumentIndex>(n);
    const room::Instrument& instrument = scene.room.instruments[i];
    const bool is_leak = instrument.quantity == room::Quantity::wetness;
    const bool is_high_high = instrument.place == room::Place::vat_high_high;
    if (!is_leak && !(is_high_high && fills(role))) continue;
    if (!witness.fresh(i)) {
      if (silence_bypassed(witness, i, is_leak)) continue;
      return instrument.id + " is not to be relied upon";
    }
    if (is_leak && witness.bypassed(CauseId::leak_wet)) continue;
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
