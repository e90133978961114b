#include "core/ledger/slope.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tidewright::ledger {
namespace {

// A step is a draw beyond so many of its deviations: by chance once in some weeks, and then it
// costs a little delay. [choice]
constexpr double sure = 4.5;
// A draw too small for that hides in a given hour perhaps once a week; noise then feigns a leak
// once in 2000. [choice]
constexpr double sure_between = 3.3;
// Of the levels, so many may be steps; a level that steps more often is no level of draws.
constexpr std::size_t levels_for_each_draw = 4;

// Levels that follow one another without a draw.
struct Side {
  double n = 0, t = 0, y = 0;  // count, means of time and level
  double tt = 0, ty = 0;       // about those means
};

Side side(std::span<const float> levels, std::size_t from, std::size_t to) {
  Side side;
  side.n = static_cast<double>(to - from);
  if (to == from) return side;
  for (std::size_t i = from; i < to; ++i) {
    side.t += static_cast<double>(i) / side.n;
    side.y += static_cast<double>(levels[i]) / side.n;
  }
  for (std::size_t i = from; i < to; ++i) {
    const double t = static_cast<double>(i) - side.t;
    side.tt += t * t;
    side.ty += t * (static_cast<double>(levels[i]) - side.y);
  }
  return side;
}

// Which levels a draw fell into. They are left out: what lies before and after has its own height.
using Drawn = std::array<bool, state::slices_max>;

// One slope for all sides, each of its own height.
struct Line {
  double tt = 0, ty = 0;
  double lever = 0;  // sum of the sizes of t: how much errors of alternate sign may tilt it
  double slope() const { return ty / tt; }
};

void add(const Side& side, Line& line) {
  line.tt += side.tt;
  line.ty += side.ty;
  line.lever += side.n * side.n / 4;
}

std::size_t end_of_side(const Drawn& drawn, std::size_t from, std::size_t count) {
  while (from < count && !drawn[from]) ++from;
  return from;
}

Line line_through(std::span<const float> levels, const Drawn& drawn) {
  Line line;
  for (std::size_t from = 0; from < levels.size();) {
    const std::size_t to = end_of_side(drawn, from, levels.size());
    add(side(levels, from, to), line);
    from = to + 1;
  }
  return line;
}

// One more draw, as if it had fallen into the level `at`.
struct Step {
  std::size_t at = 0;
  Line line;
  double size = 0;
  double error = 0;  // standard deviation, where each level's is 1
};

// Calls see(Step) for each place where one more draw may lie, with a level at least on either side.
template <class See>
void each_step(std::span<const float> levels, const Drawn& drawn, const Line& line, See see) {
  for (std::size_t from = 0; from < levels.size();) {
    const std::size_t to = end_of_side(drawn, from, levels.size());
    const Side whole = side(levels, from, to);
    for (std::size_t at = from + 1; at + 1 < to; ++at) {
      const Side before = side(levels, from, at);
      const Side after = side(levels, at + 1, to);
      Step step{at, {line.tt - whole.tt, line.ty - whole.ty, 0}};
      add(before, step.line);
      add(after, step.line);
      if (step.line.tt < 0.4) continue;  // two neighbours alone have 0.5
      const double apart = after.t - before.t;
      step.size = after.y - before.y - step.line.slope() * apart;
      step.error = std::sqrt(1 / before.n + 1 / after.n + apart * apart / step.line.tt);
      see(step);
    }
    from = to + 1;
  }
}

// Finds the surest draw first, then the next beside it, and so on.
Drawn draws_among(std::span<const float> levels, const LevelError& error) {
  Drawn drawn{};
  for (std::size_t draws = 0; draws < levels.size() / levels_for_each_draw; ++draws) {
    double surest = 1;
    std::size_t at = 0;
    each_step(levels, drawn, line_through(levels, drawn), [&](const Step& step) {
      const double least = sure * step.error * error.deviation.value + 2 * error.rounding.value;
      const double surely = std::abs(step.size) / least;
      if (surely <= surest) return;
      surest = surely;
      at = step.at;
    });
    if (at == 0) break;
    drawn[at] = true;
  }
  return drawn;
}

}  // namespace

Fall fall(std::span<const float> levels, double hours_apart, const LevelError& error) {
  const Drawn drawn = draws_among(levels, error);
  const Line line = line_through(levels, drawn);
  const double hours = static_cast<double>(levels.size()) * hours_apart;
  // The slope of a random walk scatters by 6/5 of its variance per time over the time looked at.
  const double walk = 1.2 * error.restless / hours;
  const auto deviation = [&](const Line& of) {
    const double noise = error.deviation.value / hours_apart;
    return LitresPerHour{std::sqrt(noise * noise / of.tt + walk)};
  };
  const auto rate = [&](const Line& of) { return LitresPerHour{-of.slope() / hours_apart}; };

  Fall fall{rate(line), deviation(line), {}, rate(line)};
  fall.bound = {error.rounding.value * line.lever / line.tt / hours_apart};
  each_step(levels, drawn, line, [&](const Step& step) {
    const LitresPerHour least = rate(step.line) - deviation(step.line) * sure_between;
    fall.between = std::min(fall.between, least);
  });
  return fall;
}

Litres rounding(Litres step, Litres spread) {
  if (step.value <= 0) return Litres{0};
  const double scatter = spread / step / 2;
  return step / 2 * std::exp(-2 * std::numbers::pi * std::numbers::pi * scatter * scatter);
}

}  // namespace tidewright::ledger
