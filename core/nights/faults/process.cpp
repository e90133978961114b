// What befalls the daemon's own process, its clock and its disk.
#include <array>
#include <chrono>

#include "core/nights/fault.hpp"
#include "core/nights/run.hpp"

namespace tidewright::nights {
namespace {

using namespace std::chrono_literals;

// As after a laptop's lid was closed: what lay in the socket is read, then the line is found dead.
void wake_up(Run& run, const Fault&) {
  run.resume();
  run.later(200ms, [](Run& later) { later.drop_link(); });
  run.later(3s, [](Run& later) { later.restore_link(); });
}

constexpr std::array rows{
    FaultKind{11, "clock_steps", "the wall clock is set to another year", Subject::none, 0s, 0s,
              -10, 10, "years", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault& fault) {
                const double years_ms = fault.amount * 365.25 * 24 * 3.6e6;
                run.wall.ahead = Duration{static_cast<Duration::rep>(years_ms)};
                run.feed(ClockSet{run.wall});
              },
              nullptr},
    FaultKind{12, "daemon_pauses", "the daemon's process stands still", Subject::none, 10s, 10min,
              0, 0, "", Excuse::pauses, Stops::both, [](Run& run, const Fault&) { run.pause(); },
              wake_up},
    FaultKind{21, "daemon_crashes", "the daemon dies and is started anew", Subject::none, 2s, 40min,
              0, 0, "", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault&) { run.crash(); },
              [](Run& run, const Fault&) {
                if (!run.is_alive()) run.start(false);
              }},
    FaultKind{21, "dies_in_step", "the daemon dies between two effects of one step", Subject::none,
              0s, 0s, 0, 5, "effects carried out", Excuse::nothing, Stops::commands,
              [](Run& run, const Fault& fault) {
                run.die_after(static_cast<std::size_t>(fault.amount), 1min);
              },
              nullptr},
    FaultKind{21, "daemon_restarts", "the daemon is ended on purpose and started anew",
              Subject::none, 1s, 20min, 0, 0, "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault&) { run.stop(); },
              [](Run& run, const Fault&) {
                if (!run.is_alive()) run.start(true);
              }},
    FaultKind{22, "disk_refuses", "the disk is full or read-only", Subject::none, 1min, 6h, 0, 0,
              "", Excuse::nothing, Stops::nothing,
              [](Run& run, const Fault&) { run.disk().refuses = true; },
              [](Run& run, const Fault&) { run.disk().refuses = false; }},
};

}  // namespace

std::span<const FaultKind> faults_of_process() { return rows; }

}  // namespace tidewright::nights
