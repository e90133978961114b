#include "core/signal/gauge_and_flow.hpp"

#include <algorithm>
#include <cmath>

#include "core/signal/quality.hpp"
#include "core/signal/ruling.hpp"
#include "core/signal/running.hpp"
#include "core/signal/water_meter.hpp"

namespace tidewright::signal {
namespace {

using namespace std::chrono_literals;
using state::LevelWindow;

// Cheap meters and vats of unknown shape: 25 %, and two steps of the gauge. [choice]
constexpr double share_allowed = 0.25;
constexpr Duration doubted_for = 10min;

void open(LevelWindow& window, Litres level, Litres passed, Instant now) {
  window = {.open = true,
            .began = now,
            .passed = passed,
            .level = level,
            .highest = level,
            .passed_last = passed};
}

// A fall, or a rise that the flow cannot have made in the time: somebody's bucket or hose.
bool disturbed(const LevelWindow& window, Litres level, Litres passed, Litres step) {
  if (level < window.highest - 2 * step) return true;
  return level > window.highest + 3 * step + 2 * (passed - window.passed_last);
}

// The two instruments that are compared.
struct Pair {
  room::InstrumentIndex gauge;
  room::InstrumentIndex meter;
};

void judge_stretch(const room::Room& room, state::Signals& signals, const Pair& pair, Litres gained,
                   Litres flowed, Instant now) {
  const double step = room.instruments[pair.gauge].step;
  const double allowed = share_allowed * std::max(gained, flowed).value + 2 * step;
  if (std::abs((gained - flowed).value) <= allowed) {
    return trust_all_like(room, signals, pair.meter, Why::flow_against_level);
  }
  doubt_all_like(room, signals, pair.meter, Why::flow_against_level, pair.gauge, flowed.value,
                 gained.value, now);
  if (flowed < gained) return;
  doubt_all_like(room, signals, pair.gauge, Why::level_against_flow, pair.meter, gained.value,
                 flowed.value, now);
}

}  // namespace

void compare_gauge_with_flow(const Beside& beside, state::Signals& signals,
                             state::Comparison& comparison, Wake& wake) {
  const room::Room& room = beside.room;
  const Instant now = beside.circumstances.now;
  LevelWindow& window = comparison.level;
  const auto gauge = ruling(room, signals, room::Quantity::level, room::Place::vat);
  const auto meter = water_meter(room, signals, room::Place::product);
  if (!gauge || !meter) return;
  const state::Signal& level_signal = signals[*gauge];

  if (level_signal.doubt == Why::level_against_flow) {
    const Instant over = level_signal.lost + doubted_for;
    if (now < over) return wake.by(over);
    trust_all_like(room, signals, *gauge, Why::level_against_flow);
    trust_all_like(room, signals, *meter, Why::flow_against_level);
    window.open = false;
  }
  const bool fills =
      purifies(room, signals, beside.drives) && !is_diverted(room, signals, beside.drives);
  const bool comparable = fills && is_sound(level_signal) && is_sound(signals[*meter]);
  if (!comparable) {
    window.open = false;
    return;
  }
  const Litres step{room.instruments[*gauge].step};
  const Litres level{level_signal.value};
  const Litres passed = comparison.water[metered(room::Place::product)].passed;
  if (!window.open || disturbed(window, level, passed, step)) {
    return open(window, level, passed, now);
  }
  if (level > window.highest) {
    window.highest = level;
    window.passed_last = passed;
  }
  const Litres gained = level - window.level;
  const Litres flowed = passed - window.passed;
  if (std::max(gained, flowed) < std::max(Litres{10}, 10 * step)) return;
  judge_stretch(room, signals, {*gauge, *meter}, gained, flowed, now);
  open(window, level, passed, now);
}

}  // namespace tidewright::signal
