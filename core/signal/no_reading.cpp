#include "core/signal/no_reading.hpp"

#include <cmath>

namespace tidewright::signal {
namespace {

// In the instrument's own unit, which is degrees Celsius: only thermometers have such a value.
// Within a degree's hundredth it is that value; nearer than five degrees it may be a real one.
// [choice]
constexpr double same = 0.01;
constexpr double out_of_line = 5;

}  // namespace

bool is_power_up(const room::Instrument& instrument, const state::Signal& signal, double value,
                 Instant now) {
  if (!instrument.power_up || std::abs(value - *instrument.power_up) > same) return false;
  const bool after_a_gap = !signal.live || now - signal.received > 2 * instrument.reports_every;
  const bool fits = signal.seen && std::abs(value - signal.value) <= out_of_line;
  return after_a_gap && !fits;
}

}  // namespace tidewright::signal
