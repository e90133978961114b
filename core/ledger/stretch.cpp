#include "core/ledger/stretch.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

// A step of a coarse gauge takes so long at twice the flow of the least leak looked for. [choice]
constexpr LitresPerHour step_takes{6};

void push(state::Stretch& stretch, float level) {
  if (stretch.count == stretch.levels.size()) {
    std::shift_left(stretch.levels.begin(), stretch.levels.end(), 1);
    --stretch.count;
  }
  stretch.levels[stretch.count++] = level;
}

// What the level does from one slice to the next.
float usual_step(const state::Stretch& stretch) {
  if (stretch.count < 4) return 0;
  const float moved = stretch.levels[stretch.count - 1] - stretch.levels[0];
  return moved / static_cast<float>(stretch.count - 1);
}

void close(state::Stretch& stretch) {
  const auto level = static_cast<float>(stretch.litre_hours / hours(stretch.lived));
  if (stretch.leapt && stretch.count > 0) {
    const float drawn = stretch.levels[stretch.count - 1] + usual_step(stretch) - level;
    for (std::size_t i = 0; i < stretch.count; ++i) stretch.levels[i] -= drawn;
  }
  push(stretch, level);
  stretch.leapt = false;
  stretch.lived = Duration{0};
  stretch.litre_hours = 0;
}

}  // namespace

Litres take_out_draw(const LevelError& error, state::Stretch& stretch) {
  constexpr std::size_t half = 6;
  constexpr double sure = 4.5;  // once a year by chance, and then it costs a little delay
  if (stretch.count < 2 * half + 1) return Litres{0};
  const std::size_t first = stretch.count - (2 * half + 1);
  const std::span<float> around{stretch.levels.data() + first, 2 * half + 1};
  const Step here = step_down(around, half);
  const double least = sure * here.error * error.deviation.value + 2 * error.rounding.value;
  const bool sharpest = here.size >= step_down(around, half - 1).size &&
                        here.size >= step_down(around, half + 1).size;
  if (here.size < least || !sharpest) return Litres{0};
  for (std::size_t i = 0; i < first + half; ++i) stretch.levels[i] -= static_cast<float>(here.size);
  around[half] = (around[half - 1] + around[half + 1]) / 2;
  return Litres{here.size};
}

Duration slice_of(const room::Instrument& gauge, bool standing) {
  const Duration shortest = standing ? Duration{10min} : Duration{5min};
  const Duration of_step{static_cast<Duration::rep>(gauge.step / step_takes.value * 3.6e6)};
  return std::max({shortest, 2 * gauge.reports_every, standing ? of_step : of_step / 4});
}

LevelError level_error(const room::Instrument& gauge, bool standing,
                       const state::GaugeNoise& noise) {
  const double readings =
      gauge.on_change ? 1 : seconds(slice_of(gauge, standing)) / seconds(gauge.reports_every);
  return {noise.spread / std::sqrt(readings), rounding(Litres{gauge.step}, noise.spread)};
}

bool post_stretch(const room::Instrument& gauge, Litres held, Duration elapsed, bool leapt,
                  state::Stretch& stretch) {
  const Duration slice = slice_of(gauge, stretch.standing);
  stretch.lived += elapsed;
  stretch.litre_hours += held.value * hours(elapsed);
  if (leapt) {
    if (stretch.lived >= slice / 2) close(stretch);
    stretch.leapt = stretch.count > 0;
    stretch.lived = Duration{0};
    stretch.litre_hours = 0;
    return false;
  }
  if (stretch.lived < slice) return false;
  close(stretch);
  return true;
}

}  // namespace tidewright::ledger
