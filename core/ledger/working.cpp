#include "core/ledger/working.hpp"

#include <algorithm>

#include "core/signal/running.hpp"

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

// A pressure switch starts and stops a pump whose plug stays ON: only power shows it.
bool turns(const Sources& from, room::ActuatorIndex actuator, bool on) {
  const auto meter = room::find(from.room, room::Quantity::power, actuator);
  if (!meter || from.signals[*meter].quality != Quality::good) return on;
  return from.signals[*meter].value >= from.room.actuators[actuator].idle_below.value;
}

void count_start(state::Working& working, bool turning, Instant now) {
  if (turning == working.turning) return;
  working.turning = turning;
  working.turning_since = now;
  if (turning) {
    std::shift_right(working.starts.begin(), working.starts.end(), 1);
    working.starts[0] = now;
  }
}

}  // namespace

void post_working(const Sources& from, Duration elapsed, state::Ledger& ledger) {
  const Instant now = from.circumstances.now;
  for (std::size_t i = 0; i < from.room.actuators.size(); ++i) {
    state::Working& working = ledger.working[i];
    if (now - working.day_began >= 24h) {
      working.day_began = now;
      working.day = Duration{0};
    }
    if (working.on) {
      working.run += elapsed;
      working.day += elapsed;
      working.total += elapsed;
    }
    const auto actuator = static_cast<room::ActuatorIndex>(i);
    const bool on = signal::works(from.room, from.signals, from.drives, actuator);
    count_start(working, turns(from, actuator, on), now);
    if (on == working.on) continue;
    working.on = on;
    working.since = now;
    if (on) working.run = Duration{0};
  }
}

}  // namespace tidewright::ledger
