// What goes wrong with a plug.
#include <array>
#include <chrono>

#include "core/nights/fault.hpp"
#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

rehearsal::PlugFaults& faults_of(Run& run, const Fault& fault) {
  return run.pretend().plug(fault.subject).faults;
}

void mend_timer(Run& run, const Fault& fault) {
  run.pretend().plug(fault.subject).mend_timer(run.now());
}

constexpr std::array rows{
    FaultKind{18, "plug_ignores_off", "a relay is welded shut", Subject::actuator, 10min, 6h, 0, 0,
              "", Excuse::welds, Stops::one_relay,
              [](Run& run, const Fault& fault) { faults_of(run, fault).ignores_off = true; },
              [](Run& run, const Fault& fault) { faults_of(run, fault).ignores_off = false; }},
    FaultKind{18, "plug_ignores_on", "a plug does not switch on", Subject::actuator, 10min, 6h, 0,
              0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { faults_of(run, fault).ignores_on = true; },
              [](Run& run, const Fault& fault) { faults_of(run, fault).ignores_on = false; }},
    FaultKind{
        18, "plug_loses_timer", "a plug does not switch off by itself any more", Subject::actuator,
        10min, 6h, 0, 0, "", Excuse::keeps_on, Stops::nothing,
        [](Run& run, const Fault& fault) { faults_of(run, fault).timer = room::LeaseKind::none; },
        mend_timer},
    FaultKind{18, "plug_takes_no_renewal", "a plug counts down from the first ON, whatever follows",
              Subject::actuator, 10min, 6h, 0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                faults_of(run, fault).timer = room::LeaseKind::plug_fixed;
              },
              mend_timer},
    FaultKind{
        19, "feedback_lies", "a plug says the same of its relay, whatever is so", Subject::actuator,
        10min, 6h, 0, 1, "(under a half: off)", Excuse::nothing, Stops::nothing,
        [](Run& run, const Fault& fault) { faults_of(run, fault).lies = fault.amount >= 0.5; },
        [](Run& run, const Fault& fault) { faults_of(run, fault).lies.reset(); }},
    FaultKind{19, "feedback_mute", "a plug says nothing of itself", Subject::actuator, 10min, 6h, 0,
              0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) { faults_of(run, fault).mute = true; },
              [](Run& run, const Fault& fault) {
                // A plug whose feedback nobody listens to has nothing to say.
                const auto plug = static_cast<room::ActuatorIndex>(fault.subject);
                const bool heard =
                    room::find(run.room(), room::Quantity::feedback, plug).has_value();
                faults_of(run, fault).mute = !heard;
              }},
    FaultKind{19, "feedback_lags", "a plug tells of its relay much later", Subject::actuator, 10min,
              6h, 2, 120, "s", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                faults_of(run, fault).lags =
                    Duration{static_cast<Duration::rep>(fault.amount * 1000)};
              },
              [](Run& run, const Fault& fault) { faults_of(run, fault).lags = Duration{0}; }},
    FaultKind{20, "plug_reboots_on", "a plug starts anew with its relay closed", Subject::actuator,
              0s, 0s, 0, 0, "", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault& fault) {
                run.pretend().plug(fault.subject).reboot(true, run.now());
              },
              nullptr},
    FaultKind{
        20, "button_pressed", "somebody presses the button on the plug", Subject::actuator, 0s, 0s,
        0, 0, "", Excuse::nothing, Stops::commands,
        [](Run& run, const Fault& fault) { run.pretend().plug(fault.subject).press(run.now()); },
        nullptr},
};

}  // namespace

std::span<const FaultKind> faults_of_plugs() { return rows; }

}  // namespace tidewright::nights
