#include "core/signal/flat_line.hpp"

#include "core/signal/quality.hpp"
#include "core/signal/running.hpp"

namespace tidewright::signal {
namespace {

// So many steps of the display above zero, noise alone moves it. [choice]
constexpr double steps_above_zero = 20;

bool change_is_expected(const room::Instrument& instrument, const state::Signal& signal,
                        bool water_runs) {
  if (instrument.quantity != room::Quantity::dissolved_solids) return true;
  return water_runs && signal.value >= steps_above_zero * instrument.step;
}

}  // namespace

void watch_flat_lines(const Beside& beside, Duration elapsed, state::Signals& signals, Wake& wake) {
  const Instant now = beside.circumstances.now;
  const bool water_runs = purifies(beside.room, signals, beside.drives);
  for (std::size_t i = 0; i < beside.room.instruments.size(); ++i) {
    const room::Instrument& instrument = beside.room.instruments[i];
    state::Signal& signal = signals[i];
    if (instrument.flat_after <= Duration{0} || !is_sound(signal)) continue;
    if (signal.changed == now) {
      signal.flat = Duration{0};
      trust(signal, Why::flat_line);
    } else if (change_is_expected(instrument, signal, water_runs)) {
      signal.flat += elapsed;
      if (signal.flat < instrument.flat_after) {
        wake.by(now + (instrument.flat_after - signal.flat));
      } else {
        doubt(signal, Why::flat_line, no_subject, hours(signal.flat), hours(instrument.flat_after),
              now);
      }
    }
  }
}

}  // namespace tidewright::signal
