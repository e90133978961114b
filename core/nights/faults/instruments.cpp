// What goes wrong with an instrument.
#include <array>
#include <chrono>
#include <limits>

#include "core/nights/fault.hpp"
#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

rehearsal::VoiceFaults& faults_of(Run& run, const Fault& fault) {
  return run.pretend().voice(fault.subject).faults;
}

// What cheap sensors say when they fail, and what no instrument should say (from memory).
constexpr std::array strange{std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity(),
                             -127.0,
                             85.0,
                             0.0,
                             1.0,
                             1e300,
                             -1e-300,
                             65535.0,
                             100.0};

constexpr std::array rows{
    FaultKind{13, "sensor_sticks", "an instrument says the same for ever", Subject::instrument,
              10min, 8h, 0, 0, "", Excuse::deceives, Stops::one_sensor,
              [](Run& run, const Fault& fault) { faults_of(run, fault).stuck = true; },
              [](Run& run, const Fault& fault) { faults_of(run, fault).stuck = false; }},
    FaultKind{14, "gauge_drifts", "a gauge shows ever more, or ever less", Subject::gauge, 1h, 8h,
              -0.1, 0.1, "of the vat an hour", Excuse::deceives, Stops::nothing,
              [](Run& run, const Fault& fault) {
                const rehearsal::Works& works = run.pretend().works();
                const bool mixing =
                    run.room().instruments[fault.subject].place == room::Place::mixing_vat &&
                    works.mixing();
                const double capacity =
                    (mixing ? works.mixing()->capacity() : works.vat().capacity()).value;
                faults_of(run, fault).drifts_per_hour = fault.amount * capacity;
                faults_of(run, fault).drifts_since = run.now();
              },
              [](Run& run, const Fault& fault) { faults_of(run, fault).drifts_per_hour = 0; }},
    FaultKind{15, "sensor_spikes", "an instrument says something absurd, once", Subject::instrument,
              0s, 0s, 0, strange.size() - 0.001, "(which absurdity)", Excuse::nothing, Stops::words,
              [](Run& run, const Fault& fault) {
                faults_of(run, fault).spike = strange[static_cast<std::size_t>(fault.amount)];
              },
              nullptr},
    FaultKind{15, "sensor_talks_garbage", "an instrument speaks, but not in numbers",
              Subject::instrument, 1min, 2h, 0, 0, "", Excuse::nothing, Stops::words,
              [](Run& run, const Fault& fault) { faults_of(run, fault).garbage = true; },
              [](Run& run, const Fault& fault) { faults_of(run, fault).garbage = false; }},
    FaultKind{17, "sensor_silent", "an instrument's battery is empty", Subject::instrument, 2min,
              8h, 0, 0, "", Excuse::nothing, Stops::words,
              [](Run& run, const Fault& fault) { faults_of(run, fault).silent = true; },
              [](Run& run, const Fault& fault) { faults_of(run, fault).silent = false; }},
    FaultKind{17, "declared_offline", "an instrument is gone, and its hub says so",
              Subject::announced, 2min, 4h, 0, 0, "", Excuse::nothing, Stops::words,
              [](Run& run, const Fault& fault) {
                faults_of(run, fault).offline = faults_of(run, fault).silent = true;
              },
              [](Run& run, const Fault& fault) {
                faults_of(run, fault).offline = faults_of(run, fault).silent = false;
              }},
    FaultKind{17, "sensor_dies_when_wet", "a leak sensor dies of the water that it should tell of",
              Subject::leak_sensor, 1h, 8h, 0, 0, "", Excuse::nothing, Stops::words,
              [](Run& run, const Fault& fault) { faults_of(run, fault).dies_of_yes = true; },
              [](Run& run, const Fault& fault) {
                faults_of(run, fault).dies_of_yes = faults_of(run, fault).silent = false;
              }},
};

}  // namespace

std::span<const FaultKind> faults_of_instruments() { return rows; }

}  // namespace tidewright::nights
