#include "core/signal/range.hpp"

#include <cmath>

namespace tidewright::signal {

bool is_measurable(const room::Instrument& instrument, double value) {
  return std::isfinite(value) && value >= instrument.gross_low && value <= instrument.gross_high;
}

bool is_plausible(const room::Instrument& instrument, double value) {
  return value >= instrument.plausible_low && value <= instrument.plausible_high;
}

}  // namespace tidewright::signal
