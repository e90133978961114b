// The broker and the line to it.
#include <array>
#include <chrono>

#include "core/nights/fault.hpp"
#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

constexpr std::uint8_t not_authorized = 135;  // MQTT 5

// Lets the daemon start while the broker remembers this of the sensor, which is silent itself.
void remember_at_start(Run& run, const Fault& fault, double value) {
  run.pretend().voice(fault.subject).faults.silent = true;
  run.broker().kept[fault.subject] = Reading{fault.subject, value, Arrival::retained, long_ago};
  run.stop();
  run.later(5s, [](Run& later) { later.start(true); });
}
void speak_again(Run& run, const Fault& fault) {
  run.pretend().voice(fault.subject).faults.silent = false;
}

// Goes and comes every `amount` seconds until `left` times are over.
void flap(Run& run, double apart_s, int left) {
  const Duration apart{static_cast<Duration::rep>(apart_s * 1000)};
  run.drop_link();
  run.later(apart / 2, [](Run& later) { later.restore_link(); });
  if (left > 0) run.later(apart, [=](Run& later) { flap(later, apart_s, left - 1); });
}

constexpr std::array rows{
    FaultKind{1, "broker_restarts", "the broker is away and comes back with what it had kept",
              Subject::none, 3s, 20min, 0, 0, "", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault&) { run.drop_link(); },
              [](Run& run, const Fault&) { run.restore_link(); }},
    FaultKind{2, "broker_forgets", "the broker is away and comes back with nothing kept",
              Subject::none, 3s, 20min, 0, 0, "", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault&) {
                run.drop_link();
                run.broker().forget();
              },
              [](Run& run, const Fault&) { run.restore_link(); }},
    FaultKind{3, "retained_dry_at_start",
              "the daemon starts; of a sensor that is silent the broker remembers \"dry\"",
              Subject::leak_sensor, 5min, 40min, 0, 0, "", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault& fault) { remember_at_start(run, fault, 0); }, speak_again},
    FaultKind{4, "retained_wet_at_start",
              "the daemon starts; of a sensor that is silent the broker remembers \"wet\"",
              Subject::leak_sensor, 5min, 40min, 0, 0, "", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault& fault) { remember_at_start(run, fault, 1); }, speak_again},
    FaultKind{8, "half_open", "the line looks up and carries nothing, until it is found out",
              Subject::none, 2s, 30s, 1, 20, "s until it is back", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault&) { run.broker().faults.half_open = true; },
              [](Run& run, const Fault& fault) {
                run.drop_link();
                run.later(Duration{static_cast<Duration::rep>(fault.amount * 1000)},
                          [](Run& later) { later.restore_link(); });
              }},
    FaultKind{9, "link_flaps", "the broker lets us in and throws us out, again and again",
              Subject::none, 0s, 0s, 3, 20, "s apart", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault& fault) { flap(run, fault.amount, 12); }, nullptr},
    FaultKind{9, "commands_refused", "the broker does not let the daemon write to the plug",
              Subject::actuator, 1min, 3h, 0, 0, "", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault& fault) {
                run.broker().faults.refuses[fault.subject] = not_authorized;
              },
              [](Run& run, const Fault& fault) { run.broker().faults.refuses[fault.subject] = 0; }},
};

}  // namespace

std::span<const FaultKind> faults_of_broker() { return rows; }

}  // namespace tidewright::nights
