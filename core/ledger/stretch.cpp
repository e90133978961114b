#include "core/ledger/stretch.hpp"

#include <algorithm>
#include <cmath>

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

void push(float level, state::Stretch& stretch) {
  if (stretch.count == stretch.levels.size()) {
    std::shift_left(stretch.levels.begin(), stretch.levels.end(), 1);
    --stretch.count;
  }
  stretch.levels[stretch.count++] = level;
}

}  // namespace

Duration slice_of(const room::Instrument& gauge, bool standing) {
  const Duration of_reports = gauge.on_change ? Duration{0} : 2 * gauge.reports_every;
  return std::max<Duration>(standing ? 10min : 3min, of_reports);
}

LevelError level_error(const room::Instrument& gauge, bool standing,
                       const state::GaugeNoise& noise) {
  const double readings =
      gauge.on_change ? 1 : seconds(slice_of(gauge, standing)) / seconds(gauge.reports_every);
  return {noise.spread / std::sqrt(readings), rounding(Litres{gauge.step}, noise.spread)};
}

bool post_stretch(const room::Instrument& gauge, Duration elapsed, state::Stretch& stretch) {
  const Duration slice = slice_of(gauge, stretch.standing);
  bool full = false;
  while (elapsed > Duration{0}) {
    const Duration part = std::min(elapsed, slice - stretch.lived);
    stretch.litre_hours += stretch.held.value * hours(part);
    stretch.lived += part;
    elapsed -= part;
    if (stretch.lived < slice) continue;
    push(static_cast<float>(stretch.litre_hours / hours(slice)), stretch);
    stretch.lived = Duration{0};
    stretch.litre_hours = 0;
    full = true;
  }
  return full;
}

}  // namespace tidewright::ledger
