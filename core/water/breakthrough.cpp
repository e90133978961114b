#include "core/water/breakthrough.hpp"

#include <algorithm>

namespace tidewright::water {
namespace {

constexpr Range halves{"litres to half", "L", 0.001, 1e9};
constexpr Range volumes{"litres passed", "L", 0, 1e9};
constexpr Range fractions{"fraction", "", 1e-6, 1 - 1e-6};

std::optional<Outside> unfit(const Breakthrough& curve) {
  const double half = curve.half.value;
  if (const auto bad = outside(halves, half)) return bad;
  return outside(Range{"spread", "L", half / 500, half}, curve.spread.value);
}

// ln(1 + e^x), which for large x is x.
double softplus(double x) { return std::max(x, 0.0) + std::log1p(std::exp(-std::abs(x))); }

double logit(double fraction) { return std::log(fraction / (1 - fraction)); }

}  // namespace

Answer<double> breakthrough_at(const Breakthrough& curve, Litres passed) {
  if (const auto bad = first(unfit(curve), outside(volumes, passed.value))) return *bad;
  return 1 / (1 + std::exp((curve.half - passed) / curve.spread));
}

Answer<Litres> litres_to(const Breakthrough& curve, double fraction) {
  if (const auto bad = first(unfit(curve), outside(fractions, fraction))) return *bad;
  return std::max(Litres{0}, curve.half + curve.spread * logit(fraction));
}

Answer<Litres> litres_held(const Breakthrough& curve, Litres passed) {
  if (const auto bad = first(unfit(curve), outside(volumes, passed.value))) return *bad;
  const double let_through =
      softplus((passed - curve.half) / curve.spread) - softplus(-(curve.half / curve.spread));
  return std::max(Litres{0}, passed - curve.spread * let_through);
}

Answer<Breakthrough> breakthrough_through(const BreakthroughReading& earlier,
                                          const BreakthroughReading& later) {
  if (const auto bad =
          first(outside(volumes, earlier.passed.value), outside(volumes, later.passed.value),
                outside(fractions, earlier.fraction), outside(fractions, later.fraction))) {
    return *bad;
  }
  const Range higher{"fraction of the later reading", "", earlier.fraction * (1 + 1e-6), 1};
  if (const auto bad = outside(higher, later.fraction)) return *bad;
  const double rise = logit(later.fraction) - logit(earlier.fraction);
  const Litres spread = (later.passed - earlier.passed) / rise;
  const Breakthrough curve{earlier.passed - spread * logit(earlier.fraction), spread};
  if (const auto bad = unfit(curve)) return *bad;
  return curve;
}

}  // namespace tidewright::water
