#include "core/ledger/slope.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tidewright::ledger {
namespace {

// A move between two levels is a draw beyond so many of its deviations: by chance once a year, and
// then it costs a little delay. [choice]
constexpr double sure = 4.5;
// A draw too small for that hides in a given hour perhaps once a week; noise then feigns a leak
// once in 2000. [choice]
constexpr double sure_between = 3.3;
// Of the times of the levels, in a line: two neighbours have 0.5.
constexpr double least_spread = 0.4;
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

// What the level does from one to the next, whatever was drawn: the median of what it does.
double usual_move(std::span<const float> levels) {
  std::array<float, state::slices_max> moves{};
  const std::size_t count = levels.size() - 1;
  for (std::size_t i = 0; i < count; ++i) moves[i] = levels[i + 1] - levels[i];
  const auto middle = moves.begin() + static_cast<std::ptrdiff_t>(count / 2);
  std::nth_element(moves.begin(), middle, moves.begin() + static_cast<std::ptrdiff_t>(count));
  return static_cast<double>(*middle);
}

// How far the level moves over one that may hold a draw, beyond what it does anyway.
double moved_over(std::span<const float> levels, std::size_t at, double usual) {
  const std::size_t before = at == 0 ? 0 : at - 1;
  const std::size_t after = std::min(at + 1, levels.size() - 1);
  const double moved = static_cast<double>(levels[after]) - static_cast<double>(levels[before]);
  return moved - usual * static_cast<double>(after - before);
}

// Takes the largest move first: it is what makes its neighbours seem to have moved.
Drawn draws_among(std::span<const float> levels, const LevelError& error) {
  Drawn drawn{}, beside{};
  const double usual = usual_move(levels);
  const double least =
      sure * std::numbers::sqrt2 * error.deviation.value + 2 * error.rounding.value;
  for (std::size_t draws = 0; draws < levels.size(); ++draws) {
    double largest = least;
    std::size_t at = levels.size();
    for (std::size_t i = 0; i < levels.size(); ++i) {
      if (beside[i]) continue;
      const double moved = std::abs(moved_over(levels, i, usual));
      if (moved <= largest) continue;
      largest = moved;
      at = i;
    }
    if (at == levels.size()) break;
    drawn[at] = true;
    for (std::size_t i = at == 0 ? 0 : at - 1; i <= std::min(at + 1, levels.size() - 1); ++i) {
      beside[i] = true;
    }
  }
  return drawn;
}

}  // namespace

Fall fall(std::span<const float> levels, double hours_apart, const LevelError& error) {
  const Drawn drawn = draws_among(levels, error);
  const Line line = line_through(levels, drawn);
  if (line.tt < least_spread) return {{}, LitresPerHour{INFINITY}, {}, {}};
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
  for (std::size_t at = 0; at < levels.size(); ++at) {
    if (drawn[at]) continue;
    Drawn one_more = drawn;
    one_more[at] = true;
    const Line sides = line_through(levels, one_more);
    if (sides.tt < least_spread) continue;
    fall.between = std::min(fall.between, rate(sides) - deviation(sides) * sure_between);
  }
  return fall;
}

Litres rounding(Litres step, Litres spread) {
  if (step.value <= 0) return Litres{0};
  const double scatter = spread / step / 2;
  return step / 2 * std::exp(-2 * std::numbers::pi * std::numbers::pi * scatter * scatter);
}

}  // namespace tidewright::ledger
