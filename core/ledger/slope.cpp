#include "core/ledger/slope.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tidewright::ledger {
namespace {

// A draw hides in a given hour perhaps once a week; noise then feigns a leak once in 2000. [choice]
constexpr double deviations_between = 3.3;

// Slope and its variance, for levels that scatter by 1.
struct Line {
  double slope = 0;
  double variance = 0;
};

double centred(std::span<const float> levels, std::size_t i) {
  return static_cast<double>(i) - static_cast<double>(levels.size() - 1) / 2;
}

Line straight(std::span<const float> levels) {
  double tt = 0, ty = 0;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    const double t = centred(levels, i);
    tt += t * t;
    ty += t * static_cast<double>(levels[i] - levels[0]);
  }
  return {ty / tt, 1 / tt};
}

// One slope and a step at `at`, fitted together; the level at `at` is left out. With a mean of its
// own on either side, slope and step part: the slope is the pooled one of both sides.
struct Broken {
  Line line;
  Step step;
};

struct Side {
  double n = 0, t = 0, y = 0;  // means of t and y
  double tt = 0, ty = 0;       // about those means
};

Side side(std::span<const float> levels, std::size_t from, std::size_t to) {
  Side side;
  side.n = static_cast<double>(to - from);
  for (std::size_t i = from; i < to; ++i) {
    side.t += static_cast<double>(i) / side.n;
    side.y += static_cast<double>(levels[i] - levels[0]) / side.n;
  }
  for (std::size_t i = from; i < to; ++i) {
    const double t = static_cast<double>(i) - side.t;
    side.tt += t * t;
    side.ty += t * (static_cast<double>(levels[i] - levels[0]) - side.y);
  }
  return side;
}

Broken broken(std::span<const float> levels, std::size_t at) {
  const Side before = side(levels, 0, at);
  const Side after = side(levels, at + 1, levels.size());
  const double tt = before.tt + after.tt;
  const double slope = (before.ty + after.ty) / tt;
  const double apart = after.t - before.t;
  return {{slope, 1 / tt},
          {before.y - after.y + slope * apart,
           std::sqrt(1 / before.n + 1 / after.n + apart * apart / tt)}};
}

}  // namespace

Fall fall(std::span<const float> levels, double hours_apart, const LevelError& error) {
  const double hours = static_cast<double>(levels.size()) * hours_apart;
  // The slope of a random walk scatters by 6/5 of its variance per time over the time looked at.
  const double walk = 1.2 * error.restless / hours;
  const double noise = error.deviation.value / hours_apart;
  const auto deviation = [&](const Line& line) {
    return LitresPerHour{std::sqrt(line.variance * noise * noise + walk)};
  };
  const auto rate = [&](const Line& line) { return LitresPerHour{-line.slope / hours_apart}; };

  const Line whole = straight(levels);
  Fall fall{rate(whole), deviation(whole), {}, rate(whole)};
  // Errors of alternate sign at either half tilt a line most: three times their size over the time.
  fall.bound = {3 * error.rounding.value / hours};
  for (std::size_t at = 1; at + 1 < levels.size(); ++at) {
    const Line sides = broken(levels, at).line;
    fall.between = std::min(fall.between, rate(sides) - deviation(sides) * deviations_between);
  }
  return fall;
}

Step step_down(std::span<const float> levels, std::size_t at) { return broken(levels, at).step; }

Litres rounding(Litres step, Litres spread) {
  if (step.value <= 0) return Litres{0};
  const double scatter = spread / step / 2;
  return step / 2 * std::exp(-2 * std::numbers::pi * std::numbers::pi * scatter * scatter);
}

}  // namespace tidewright::ledger
