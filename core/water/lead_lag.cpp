#include "core/water/lead_lag.hpp"

#include <algorithm>

namespace tidewright::water {
namespace {

constexpr Range sharpnesses{"half / spread", "", 3, 300};
constexpr Range fractions{"fraction of the permeate", "", 0.001, 0.99};

// More turns than any rotation in range needs to settle to the last digit.
constexpr int turns_max = 1000;

std::optional<Outside> unfit(double sharpness, double fraction) {
  return first(outside(sharpnesses, sharpness), outside(fractions, fraction));
}

// A, at which A / (A + b - 1) = fraction.
double charge_until(double fraction, double b) { return (b - 1) * fraction / (1 - fraction); }

}  // namespace

Answer<double> run_of_one(double sharpness, double fraction) {
  if (const auto bad = unfit(sharpness, fraction)) return *bad;
  const double charge = charge_until(fraction, std::exp(sharpness));
  return std::max(0.0, std::log(charge)) / sharpness;
}

Answer<double> run_of_two_together(double sharpness, double fraction) {
  if (const auto bad = unfit(sharpness, fraction)) return *bad;
  const double charge = charge_until(fraction, std::exp(2 * sharpness));
  return std::max(0.0, std::log(charge)) / (2 * sharpness);
}

Answer<Rotation> rotation(double sharpness, RotateWhen when, double fraction) {
  if (const auto bad = unfit(sharpness, fraction)) return *bad;
  const double fresh = std::exp(sharpness);
  double lead = fresh;
  for (int turn = 0;; ++turn) {
    // A fresh lag behind the lead: together they are one bed of the product of both.
    const double both = lead * fresh;
    const double judged = when == RotateWhen::lead_reaches ? lead : both;
    const double charge = charge_until(fraction, judged);
    if (charge <= 1) {
      return Outside{Range{fractions.name, "", 1 / judged, fractions.high}, fraction};
    }
    const double lag_charge = (charge + lead - 1) / lead;
    const double next_lead = 1 + (fresh - 1) / lag_charge;
    if (turn == turns_max || std::abs(next_lead / lead - 1) < 1e-14) {
      return Rotation{std::log(charge) / sharpness, 1 - std::log1p((lead - 1) / charge) / sharpness,
                      charge / (charge + lead - 1), charge / (charge + both - 1)};
    }
    lead = next_lead;
  }
}

}  // namespace tidewright::water
