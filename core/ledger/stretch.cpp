#include "core/ledger/stretch.hpp"

#include <algorithm>
#include <cmath>

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

// A step of a coarse gauge takes a slice at twice the flow of the least leak looked for. [choice]
constexpr LitresPerHour step_takes{6};
constexpr int runs_faster = 4;  // than it leaks

void push(float level, state::Stretch& stretch) {
  if (stretch.count == stretch.levels.size()) {
    std::shift_left(stretch.levels.begin(), stretch.levels.end(), 1);
    --stretch.count;
  }
  stretch.levels[stretch.count++] = level;
}

}  // namespace

Duration slice_of(const room::Instrument& gauge, bool standing) {
  const Duration of_step{static_cast<Duration::rep>(gauge.step / step_takes.value * 3.6e6)};
  const Duration of_reports = gauge.on_change ? Duration{0} : 2 * gauge.reports_every;
  if (standing) return std::max({Duration{10min}, of_reports, of_step});
  return std::max({Duration{3min}, of_reports, of_step / runs_faster});
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
