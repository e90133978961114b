#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using room::Place;
using room::Quantity;

// A person vouches for it, and for no other.
bool bypassed(const Witness& witness, const room::Instrument& instrument) {
  return instrument.quantity == Quantity::wetness
             ? witness.bypassed(room::CauseId::leak_sensor_awaited)
             : instrument.place == Place::vat_high_high &&
                   witness.bypassed(room::CauseId::high_high_lost);
}

bool before_start(const room::Instrument& instrument, room::Role role) {
  if (instrument.quantity == Quantity::wetness) return true;
  const bool gauge = instrument.quantity == Quantity::level && instrument.place == Place::vat;
  return fills(role) && (gauge || instrument.place == Place::vat_high_high);
}

Complaint judge(const Scene& scene) {
  return for_each_actuator(scene.room, moves_water, [&](room::ActuatorIndex i) -> Complaint {
    if (!starts(scene, i)) return std::nullopt;
    for (std::size_t n = 0; n < scene.room.instruments.size(); ++n) {
      const room::Instrument& instrument = scene.room.instruments[n];
      const Heard& heard = scene.witness.heard[n];
      // One that speaks on change only is vouched for by its availability.
      const bool vouched = instrument.on_change && heard.online_at != long_ago;
      if (!before_start(instrument, scene.room.actuators[i].role) || heard.live || vouched ||
          bypassed(scene.witness, instrument)) {
        continue;
      }
      return fmt::format("{} is switched ON before {} was heard live", scene.room.actuators[i].id,
                         instrument.id);
    }
    return std::nullopt;
  });
}

}  // namespace

extern const Invariant live_before_start{
    .number = 10,
    .name = "live_before_start",
    .sentence =
        "after a start or a lost line nothing is switched ON before leak sensors, gauge "
        "and highest float switch were heard live",
    .after_step = judge};

}  // namespace tidewright::nights
