#include "core/signal/rate.hpp"

#include <cmath>

namespace tidewright::signal {
namespace {

bool within_reach(const room::Instrument& instrument, double from, Instant then, double to,
                  Instant now) {
  if (instrument.per_second_max <= 0) return true;
  return std::abs(to - from) <=
         instrument.per_second_max * seconds(now - then) + 2 * instrument.step;
}

}  // namespace

bool is_leap(const room::Instrument& instrument, const state::Signal& signal, double value,
             Instant now) {
  if (signal.quality != Quality::good) return false;
  if (within_reach(instrument, signal.value, signal.received, value, now)) return false;
  const bool seen_again = signal.refused_in_a_row > 0 &&
                          within_reach(instrument, signal.doubted, signal.received, value, now);
  return !seen_again;
}

}  // namespace tidewright::signal
