#include "core/ledger/stories.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace tidewright::ledger {
namespace {

// How seldom a float sticks or a filter blocks, an hour of filling. [choice]
constexpr double sticks = 1.0 / 1000;

// Where a story happens so often an hour, what it must explain to be the likelier one, in
// variances: twice the logarithm of its chance in the time looked at.
double cost(double an_hour, double hours) { return -2 * std::log(std::min(1.0, an_hour * hours)); }

double cost_of_draw(double litres, const DrawsKnown& known, double hours) {
  return cost(std::max(known.seen, known.restless / (litres * litres)), hours);
}

// Of each slice how far it is off a flow that goes on, summed from the first one on.
using Sums = std::array<double, story_longest + 1>;

// What a level lower by one draw, or by two, leaves of `flows`.
template <class CostOfDraw>
double with_draws(double flows, const Sums& sums, std::size_t count, const CostOfDraw& cost_of) {
  double least = flows;
  for (std::size_t first = 0; first < count; ++first) {
    for (std::size_t second = first + 1; second <= count; ++second) {
      const auto between = static_cast<double>(second - first);
      const double one = (sums[first] - sums[second]) / between;
      if (one <= 0) continue;
      double told = flows - between * one * one + cost_of(one);
      if (second < count) {
        const auto rest = static_cast<double>(count - second);
        const double both = (sums[second] - sums[count]) / rest;
        if (both <= one) continue;
        told += cost_of(both - one) - rest * both * both;
      }
      least = std::min(least, told);
    }
  }
  return least;
}

}  // namespace

Stories stories(std::span<const float> after, const Lead& lead, const DrawsKnown& known,
                double hours, double variance) {
  Stories told;
  Sums sums{};
  double flows = 0, tt = 0, ty = 0;
  for (std::size_t i = 0; i < after.size(); ++i) {
    const double t = static_cast<double>(i) + 0.5;
    const double rise = static_cast<double>(after[i]) - lead.level;
    const double off = rise - lead.slope * t;
    flows += off * off;
    told.stops += rise * rise;
    sums[i + 1] = sums[i] + off;
    tt += t * t;
    ty += t * rise;
  }
  told.rate = ty / tt;
  told.beyond_doubt = flows - told.stops;
  told.stops += variance * cost(sticks, hours);
  told.drawn = with_draws(flows, sums, after.size(), [&](double litres) {
    return variance * cost_of_draw(litres, known, hours);
  });
  return told;
}

}  // namespace tidewright::ledger
