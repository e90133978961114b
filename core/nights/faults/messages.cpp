// What befalls single messages on their way.
#include <array>
#include <chrono>

#include "core/nights/fault.hpp"
#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

Duration of_seconds(double s) { return Duration{static_cast<Duration::rep>(s * 1000)}; }

// A thousand messages a second of what the instrument says now.
void burst(Run& run, const Fault& fault) {
  const room::Instrument& instrument = run.room().instruments[fault.subject];
  const double value = run.pretend().truth(instrument);
  for (int i = 0; i < static_cast<int>(fault.amount); ++i) {
    const Instant at = run.now() + Duration{i};
    run.broker().forge({at, Reading{fault.subject, value, Arrival::live, long_ago}}, at);
  }
}

// Somebody else publishes under the instrument's name, every ten seconds.
void spoof(Run& run, const Fault& fault) {
  for (Duration after{0}; after < fault.lasting; after += 10s) {
    const Reading lie{fault.subject, fault.amount < 0.5 ? 0.0 : 1.0, Arrival::live, long_ago};
    run.later(after, [lie](Run& later) { later.broker().forge({later.now(), lie}, later.now()); });
  }
}

constexpr std::array rows{
    FaultKind{5, "doubled", "messages come twice, the second up to a minute later", Subject::none,
              5min, 3h, 0.05, 0.5, "of them", Excuse::delays_a_minute, Stops::nothing,
              [](Run& run, const Fault& fault) { run.broker().faults.doubled = fault.amount; },
              [](Run& run, const Fault&) { run.broker().faults.doubled = 0; }},
    FaultKind{
        6, "reordered", "messages come late and overtake each other", Subject::none, 5min, 3h, 1,
        180, "s at most", Excuse::delays, Stops::nothing,
        [](Run& run, const Fault& fault) { run.broker().faults.late = of_seconds(fault.amount); },
        [](Run& run, const Fault&) { run.broker().faults.late = Duration{0}; }},
    FaultKind{
        7, "words_lost", "what the room says gets lost on its way to the daemon", Subject::none,
        1min, 2h, 0.3, 1, "of it", Excuse::nothing, Stops::words,
        [](Run& run, const Fault& fault) { run.broker().faults.lost_to_daemon = fault.amount; },
        [](Run& run, const Fault&) { run.broker().faults.lost_to_daemon = 0; }},
    FaultKind{
        7, "commands_lost", "commands get lost on their way to the plugs", Subject::none, 1min, 2h,
        0.3, 1, "of them", Excuse::nothing, Stops::commands,
        [](Run& run, const Fault& fault) { run.broker().faults.lost_to_plugs = fault.amount; },
        [](Run& run, const Fault&) { run.broker().faults.lost_to_plugs = 0; }},
    FaultKind{7, "one_is_cut_off", "one instrument's words do not arrive", Subject::instrument,
              1min, 2h, 0, 0, "", Excuse::nothing, Stops::words,
              [](Run& run, const Fault& fault) { run.broker().faults.cut[fault.subject] = true; },
              [](Run& run, const Fault& fault) { run.broker().faults.cut[fault.subject] = false; }},
    FaultKind{
        10, "slow_broker", "every message takes its time, in order", Subject::none, 1min, 2h, 1, 60,
        "s", Excuse::delays, Stops::commands,
        [](Run& run, const Fault& fault) { run.broker().faults.slow = of_seconds(fault.amount); },
        [](Run& run, const Fault&) { run.broker().faults.slow = Duration{0}; }},
    FaultKind{16, "burst", "a thousand messages a second of one instrument", Subject::instrument,
              0s, 0s, 100, 1000, "messages", Excuse::nothing, Stops::nothing, burst, nullptr},
    FaultKind{25, "spoofed", "somebody else publishes under a leak sensor's name",
              Subject::leak_sensor, 1min, 1h, 0, 1, "(under a half: dry)", Excuse::deceives,
              Stops::one_sensor, spoof, nullptr},
};

}  // namespace

std::span<const FaultKind> faults_of_messages() { return rows; }

}  // namespace tidewright::nights
