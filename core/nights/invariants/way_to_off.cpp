#include "core/nights/invariants/way_to_off.hpp"

#include <algorithm>
#include <chrono>

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

constexpr Duration one_pass = 2s;
// What came late of a fault touches longer than the fault lasts.
constexpr Duration late = 10min;

Duration of_seconds(double s) { return Duration{static_cast<Duration::rep>(s * 1000)}; }

bool touches(const Moment& moment, const Fault& fault, Instant since) {
  return moment.begin + fault.at <= moment.witness.now &&
         moment.begin + fault.at + fault.lasting + late >= since;
}

Duration delays(const Moment& moment, Instant since) {
  Duration sum{0};
  for (const Fault& fault : moment.night.faults) {
    Duration adds{0};
    if (fault.kind->excuse == Excuse::delays) adds = 2 * of_seconds(fault.amount);
    if (fault.kind->excuse == Excuse::delays_a_minute) adds = 60s;
    if (fault.kind->excuse == Excuse::pauses) adds = fault.lasting;
    if (adds > Duration{0} && touches(moment, fault, since)) sum += adds;
  }
  return sum;
}

}  // namespace

Duration lease_to_off(const Moment& moment, room::ActuatorIndex i, Instant since) {
  const room::Actuator& actuator = moment.room.actuators[i];
  const Duration plug = of_seconds(moment.night.habits.obeys_after_s) + actuator.travel;
  const Duration carrying = of_seconds(3 * moment.night.habits.broker_latency_s) + 10s;
  return actuator.lease + one_pass + plug + carrying + delays(moment, since);
}

bool excused(const Moment& moment, Excuse excuse, std::uint8_t subject, Instant since) {
  return std::any_of(moment.night.faults.begin(), moment.night.faults.end(),
                     [&](const Fault& fault) {
                       return fault.kind->excuse == excuse && fault.subject == subject &&
                              touches(moment, fault, since);
                     });
}

bool stays_on(const Moment& moment, room::ActuatorIndex i, Instant since) {
  return excused(moment, Excuse::welds, i, since) || excused(moment, Excuse::keeps_on, i, since);
}

}  // namespace tidewright::nights
