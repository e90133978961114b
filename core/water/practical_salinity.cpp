#include "core/water/practical_salinity.hpp"

#include <algorithm>
#include <cmath>

#include "core/water/solve.hpp"
#include "core/water/temperature_scale.hpp"

namespace tidewright::water {
namespace {

constexpr Range salinity_made_for{"practical salinity", "", 2, 42};
constexpr Range salinity_possible{"practical salinity", "", 0, 70};
constexpr Range temperature_made_for{"temperature", "°C", -2, 35};
constexpr Range temperature_possible{"temperature", "°C", -5, 60};
constexpr Range conductivity_possible{"conductivity", "mS/cm", 0, 200};
constexpr Range ratio_possible{"conductivity ratio", "", 0, 4};

constexpr double hill_below = 2;

// Conductivity of standard seawater at this temperature, as a fraction of that at 15 degrees:
// UNESCO 44 equation 3.
double standard_ratio(Celsius temperature) {
  const double t = degrees_ipts_68(temperature);
  return 0.6766097 + t * (2.00564e-2 + t * (1.104259e-4 + t * (-6.9698e-7 + t * 1.0031e-9)));
}

// UNESCO 44 equation 2: how much of its second polynomial counts at this temperature.
double warmth(Celsius temperature) {
  const double above_15 = degrees_ipts_68(temperature) - 15;
  return above_15 / (1 + 0.0162 * above_15);
}

// UNESCO 44 equations 1 and 2; `x` is the root of the ratio Rt.
double scale_1978(double x, double warmth) {
  const double at_15 =
      0.0080 + x * (-0.1692 + x * (25.3851 + x * (14.0941 + x * (-7.0261 + x * 2.7081))));
  const double beyond =
      0.0005 + x * (-0.0056 + x * (-0.0066 + x * (-0.0375 + x * (0.0636 - x * 0.0144))));
  return at_15 + warmth * beyond;
}

// What Hill, Dauphinee & Woods take away from the scale in diluted seawater.
double hill_correction(double x, double warmth) {
  const double root = 10 * x;
  const double square = 400 * x * x;
  return 0.0080 / (1 + square * (1.5 + square)) +
         warmth * 0.0005 / (1 + root * (1 + root * (1 + root)));
}

// What their formula is to be multiplied with, for it to be 2 where the scale is 2. The correction
// there is so flat that an error of 1e-9 in x is one of 1e-11 at most.
double hill_scale(double warmth) {
  const auto scale = [warmth](double x) { return scale_1978(x, warmth); };
  const double x = solve(scale, hill_below, {0.262, 0.27}, 1e-9).value_or(0.267);
  return hill_below / (hill_below - hill_correction(x, warmth));
}

double diluted(double x, double warmth, double hill_scale) {
  return hill_scale * (scale_1978(x, warmth) - hill_correction(x, warmth));
}

std::optional<Outside> extrapolated(PracticalSalinity salinity, Celsius temperature) {
  return first(outside(salinity_made_for, salinity.value),
               outside(temperature_made_for, temperature.value));
}

// Requires a temperature that is possible and a ratio from 0 to 10.
Answer<PracticalSalinity> salinity_at(double ratio, Celsius temperature) {
  const double x = std::sqrt(ratio);
  const double warm = warmth(temperature);
  double found = scale_1978(x, warm);
  if (found < hill_below) found = std::max(0.0, diluted(x, warm, hill_scale(warm)));
  if (const auto why = outside(salinity_possible, found)) return *why;
  return {{found}, extrapolated({found}, temperature)};
}

}  // namespace

Answer<PracticalSalinity> salinity_of_ratio(double ratio, Celsius temperature) {
  if (const auto why =
          first(outside(ratio_possible, ratio), outside(temperature_possible, temperature.value))) {
    return *why;
  }
  return salinity_at(ratio, temperature);
}

Answer<PracticalSalinity> practical_salinity(MillisiemensPerCm conductivity, Celsius temperature) {
  if (const auto why = first(outside(conductivity_possible, conductivity.value),
                             outside(temperature_possible, temperature.value))) {
    return *why;
  }
  const auto standard = standard_seawater_conductivity * standard_ratio(temperature);
  return salinity_at(conductivity / standard, temperature);
}

Answer<MillisiemensPerCm> conductivity(PracticalSalinity salinity, Celsius temperature) {
  if (const auto why = first(outside(salinity_possible, salinity.value),
                             outside(temperature_possible, temperature.value))) {
    return *why;
  }
  const double warm = warmth(temperature);
  const double scale = salinity.value < hill_below ? hill_scale(warm) : 1;
  const auto salinity_at = [&](double x) {
    return salinity.value < hill_below ? diluted(x, warm, scale) : scale_1978(x, warm);
  };
  // In diluted water the function falls a little below 0 before it rises: it is there once only.
  const double x = solve(salinity_at, salinity.value, {0, 2}, 1e-12).value_or(0);
  return {standard_seawater_conductivity * (standard_ratio(temperature) * x * x),
          extrapolated(salinity, temperature)};
}

}  // namespace tidewright::water
