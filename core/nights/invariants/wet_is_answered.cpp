#include <algorithm>
#include <cmath>

#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

constexpr Duration answers_apart = 500ms;

bool says_off(const Scene& scene, room::ActuatorIndex i) {
  return std::any_of(scene.effects.begin(), scene.effects.end(), [&](const Effect& effect) {
    const auto* command = std::get_if<Command>(&effect);
    return command != nullptr && command->actuator == i && !command->on;
  });
}

// OFF, said less than half a second ago and confirmed by the plug.
bool settled(const Scene& scene, room::ActuatorIndex i) {
  const auto feedback = room::find(scene.room, room::Quantity::feedback, i);
  if (!feedback || scene.before.ordered[i].on) return false;
  const bool confirmed =
      scene.witness.fresh(*feedback) && scene.witness.heard[*feedback].value < 0.5;
  return confirmed && scene.witness.now - scene.before.ordered[i].sent < answers_apart;
}

Complaint judge(const Scene& scene) {
  const auto* reading = std::get_if<Reading>(&scene.event.what);
  if (reading == nullptr || !(reading->value >= 0.5)) return std::nullopt;
  const room::Instrument& instrument = scene.room.instruments[reading->instrument];
  if (instrument.quantity != room::Quantity::wetness || reading->value > instrument.gross_high ||
      scene.witness.bypassed(room::CauseId::leak_wet)) {
    return std::nullopt;
  }
  return for_each_actuator(scene.room, moves_water, [&](room::ActuatorIndex i) -> Complaint {
    if (says_off(scene, i) || settled(scene, i)) return std::nullopt;
    return fmt::format("{} says wet, and {} is not switched off", instrument.id,
                       scene.room.actuators[i].id);
  });
}

}  // namespace

extern const Invariant wet_is_answered{
    .number = 2,
    .name = "wet_is_answered",
    .sentence = "every report of water that is delivered is answered with OFF in the same pass",
    .after_step = judge};

}  // namespace tidewright::nights
