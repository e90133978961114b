#include "core/water/lead_lag.hpp"

#include <algorithm>

namespace tidewright::water {
namespace {

constexpr Range sharpnesses{"half / spread", "", 3, 300};
constexpr Range fractions{"fraction of the permeate", "", 0.001, 0.99};
constexpr Range lefts{"capacity left", "", 0, 2};
constexpr Range behind_leads{"behind the lead / permeate", "", 1e-9, 1};

// More turns than any rotation in range needs to settle to the last digit.
constexpr int turns_max = 1000;

std::optional<Outside> unfit(double sharpness, double fraction) {
  return first(outside(sharpnesses, sharpness), outside(fractions, fraction));
}

// A, at which A / (A + b - 1) = fraction.
double charge_until(double fraction, double b) { return (b - 1) * fraction / (1 - fraction); }

}  // namespace

Answer<double> run_of(double sharpness, double left, double fraction) {
  if (const auto bad = first(unfit(sharpness, fraction), outside(lefts, left))) return *bad;
  const double charge = charge_until(fraction, std::exp(sharpness * left));
  return std::max(0.0, std::log(charge)) / sharpness;
}

Answer<double> run_of_one(double sharpness, double fraction) {
  return run_of(sharpness, 1, fraction);
}

Answer<double> run_of_two_together(double sharpness, double fraction) {
  const Answer<double> both = run_of(sharpness, 2, fraction);
  return both ? Answer<double>(*both / 2) : both;
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

Answer<CanistersLeft> canisters_left(double sharpness, double behind_lead, double behind_lag) {
  if (const auto bad =
          first(outside(sharpnesses, sharpness), outside(behind_leads, behind_lead),
                outside(Range{"behind the lag / permeate", "", 1e-12, behind_lead}, behind_lag))) {
    return *bad;
  }
  const auto left = [&](double share) { return std::min(1.0, -std::log(share) / sharpness); };
  return CanistersLeft{left(behind_lead), left(behind_lag / behind_lead)};
}

Answer<double> fresh_lag_left(double sharpness, double behind_lead) {
  if (const auto bad = first(outside(sharpnesses, sharpness), outside(behind_leads, behind_lead))) {
    return *bad;
  }
  return std::log1p(std::expm1(sharpness) * (1 - behind_lead)) / sharpness;
}

}  // namespace tidewright::water
