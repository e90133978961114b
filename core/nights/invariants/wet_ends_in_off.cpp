#include <algorithm>

#include "core/nights/fault.hpp"
#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

constexpr Duration one_pass = 2s;

Duration of_seconds(double s) { return Duration{static_cast<Duration::rep>(s * 1000)}; }

// Whether the fault touches the time from `since` to now; what came late of it touches longer.
bool touches(const Moment& moment, const Fault& fault, Instant since, Duration after) {
  return moment.begin + fault.at <= moment.witness.now &&
         moment.begin + fault.at + fault.lasting + after >= since;
}

// What the plan's faults add to the time.
Duration delays(const Moment& moment, Instant since) {
  Duration sum{0};
  for (const Fault& fault : moment.night.faults) {
    Duration adds{0};
    if (fault.kind->excuse == Excuse::delays) adds = 2 * of_seconds(fault.amount);
    if (fault.kind->excuse == Excuse::delays_a_minute) adds = 60s;
    if (fault.kind->excuse == Excuse::pauses) adds = fault.lasting;
    if (adds > Duration{0} && touches(moment, fault, since, 10min)) sum += adds;
  }
  return sum;
}

bool is(const Moment& moment, Excuse excuse, std::uint8_t subject, Instant since) {
  return std::any_of(moment.night.faults.begin(), moment.night.faults.end(),
                     [&](const Fault& fault) {
                       return fault.kind->excuse == excuse && fault.subject == subject &&
                              touches(moment, fault, since, 10min);
                     });
}

// How long the last honest leak sensor may be silent before that counts; never if none is honest.
Duration patience(const Moment& moment, Instant since) {
  Duration least = Duration::max();
  for (std::size_t n = 0; n < moment.room.instruments.size(); ++n) {
    const room::Instrument& instrument = moment.room.instruments[n];
    if (instrument.quantity != room::Quantity::wetness) continue;
    if (is(moment, Excuse::deceives, static_cast<std::uint8_t>(n), since)) continue;
    least = std::min(least, room::stale_after(instrument));
  }
  return least;
}

Complaint judge(const Moment& moment) {
  const Witness& witness = moment.witness;
  if (!witness.wet) return std::nullopt;
  return for_each_actuator(moment.room, moves_water, [&](room::ActuatorIndex i) -> Complaint {
    if (witness.on_since[i] == never) return std::nullopt;
    const room::Actuator& actuator = moment.room.actuators[i];
    const Instant since = std::max(witness.wet_since, witness.on_since[i]);
    const Duration lasted = witness.now - since;
    if (lasted < actuator.lease || actuator.lease_kind == room::LeaseKind::none) {
      return std::nullopt;
    }
    const Duration silence = patience(moment, since);
    if (silence == Duration::max() || is(moment, Excuse::welds, i, since)) return std::nullopt;
    const Duration plug = of_seconds(moment.night.habits.obeys_after_s) + actuator.travel;
    const Duration carrying = of_seconds(3 * moment.night.habits.broker_latency_s) + 10s;
    const Duration bound =
        silence + actuator.lease + one_pass + plug + carrying + delays(moment, since);
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
