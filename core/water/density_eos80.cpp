#include "core/water/density_eos80.hpp"

#include <cmath>

#include "core/water/temperature_scale.hpp"

namespace tidewright::water {
namespace {

constexpr Range salinity_made_for{"practical salinity", "", 0, 42};
constexpr Range salinity_possible{"practical salinity", "", 0, 70};
constexpr Range temperature_made_for{"temperature", "°C", -2, 40};
constexpr Range temperature_possible{"temperature", "°C", -6, 60};

}  // namespace

Answer<KilogramsPerCubicMetre> density_eos80(PracticalSalinity salinity, Celsius temperature) {
  const double s = salinity.value;
  if (const auto why =
          first(outside(salinity_possible, s), outside(temperature_possible, temperature.value))) {
    return *why;
  }
  const double t = degrees_ipts_68(temperature);
  const double pure =
      999.842594 +
      t * (6.793952e-2 +
           t * (-9.095290e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
  const double a = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
  const double b = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
  const double c = 4.8314e-4;
  return {{pure + s * (a + std::sqrt(s) * b + s * c)},
          first(outside(salinity_made_for, s), outside(temperature_made_for, temperature.value))};
}

}  // namespace tidewright::water
