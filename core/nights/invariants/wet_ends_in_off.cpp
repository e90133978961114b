#include <algorithm>

#include "core/nights/invariants/judging.hpp"
#include "core/nights/invariants/way_to_off.hpp"

namespace tidewright::nights {
namespace {

// How long the last honest leak sensor may be silent before that counts; never if none is honest.
Duration patience(const Moment& moment, Instant since) {
  Duration least = Duration::max();
  for (std::size_t n = 0; n < moment.room.instruments.size(); ++n) {
    const room::Instrument& instrument = moment.room.instruments[n];
    if (instrument.quantity != room::Quantity::wetness) continue;
    if (excused(moment, Excuse::deceives, static_cast<std::uint8_t>(n), since)) continue;
    least = std::min(least, room::stale_after(instrument));
  }
  return least;
}

// Since when no leak sensor's word or silence is taken out of the interlock by a person.
Instant trusted_since(const Witness& witness) {
  return std::max({witness.bypass_end(room::CauseId::leak_wet),
                   witness.bypass_end(room::CauseId::leak_sensor_lost),
                   witness.bypass_end(room::CauseId::leak_sensor_awaited)});
}

Complaint judge(const Moment& moment) {
  const Witness& witness = moment.witness;
  if (!witness.wet) return std::nullopt;
  return for_each_actuator(moment.room, moves_water, [&](room::ActuatorIndex i) -> Complaint {
    if (witness.on_since[i] == never) return std::nullopt;
    const room::Actuator& actuator = moment.room.actuators[i];
    const Instant since =
        std::max({witness.wet_since, witness.on_since[i], trusted_since(witness)});
    const Duration lasted = witness.now - since;
    if (lasted < actuator.lease || actuator.lease_kind == room::LeaseKind::none) {
      return std::nullopt;
    }
    const Duration silence = patience(moment, since);
    if (silence == Duration::max() || stays_on(moment, i, since)) return std::nullopt;
    const Duration bound = silence + lease_to_off(moment, i, since);
    if (lasted <= bound) return std::nullopt;
    return fmt::format("water stood on the floor and {} was ON for {:.0f} s; {:.0f} s are allowed",
                       actuator.id, seconds(lasted), seconds(bound));
  });
}

}  // namespace

extern const Invariant wet_ends_in_off{
    .number = 2,
    .name = "wet_ends_in_off",
    .sentence =
        "from water on the floor to the relay open: no longer than a sensor's silence, the "
        "lease, one pass and the delivery",
    .after_step = nullptr,
    .at_any_time = judge};

}  // namespace tidewright::nights
