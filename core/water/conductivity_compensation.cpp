#include "core/water/conductivity_compensation.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include "core/water/practical_salinity.hpp"

namespace tidewright::water {
namespace {

constexpr Celsius reference{25};
constexpr Range iso_7888_made_for{"temperature", "°C", 0, 35};
constexpr Range linear_possible{"temperature", "°C", 0, 50};
constexpr Range coefficient_possible{"temperature coefficient", "%/°C", 0, 3.5};
constexpr Range salinity_possible{"practical salinity", "", 0.1, 70};
constexpr Range conductivity_possible{"conductivity", "mS/cm", 0, 200};

// At whole degrees from 0.
constexpr std::array iso_7888_factors{
    1.918, 1.857, 1.800, 1.745, 1.693, 1.643, 1.596, 1.551, 1.508, 1.467, 1.428, 1.390,
    1.354, 1.320, 1.287, 1.256, 1.225, 1.196, 1.168, 1.141, 1.116, 1.091, 1.067, 1.044,
    1.021, 1.000, 0.979, 0.959, 0.940, 0.921, 0.903, 0.886, 0.869, 0.853, 0.837, 0.822};

Answer<double> iso_7888_factor(double celsius) {
  if (const auto why = outside(iso_7888_made_for, celsius)) return *why;
  const std::size_t below =
      std::min(static_cast<std::size_t>(celsius), iso_7888_factors.size() - 2);
  const double part = celsius - static_cast<double>(below);
  return iso_7888_factors[below] + part * (iso_7888_factors[below + 1] - iso_7888_factors[below]);
}

Answer<double> linear_factor(double celsius, double percent_per_celsius) {
  if (const auto why = first(outside(linear_possible, celsius),
                             outside(coefficient_possible, percent_per_celsius))) {
    return *why;
  }
  return 1 / (1 + percent_per_celsius / 100 * (celsius - reference.value));
}

}  // namespace

Answer<double> factor_to_25(Compensation compensation, Celsius temperature) {
  switch (compensation.law) {
    case Compensation::Law::linear:
      return linear_factor(temperature.value, compensation.percent_per_celsius);
    case Compensation::Law::iso_7888:
      return iso_7888_factor(temperature.value);
    case Compensation::Law::none:
      break;
  }
  return 1.0;
}

Answer<double> seawater_factor_to_25(PracticalSalinity salinity, Celsius temperature) {
  if (const auto why = outside(salinity_possible, salinity.value)) return *why;
  const auto here = conductivity(salinity, temperature);
  if (!here) return *here.outside();
  return {*conductivity(salinity, reference) / *here, here.outside()};
}

Answer<PracticalSalinity> salinity_of_compensated(MillisiemensPerCm shown, Celsius temperature,
                                                  Compensation compensation) {
  if (const auto why = outside(conductivity_possible, shown.value)) return *why;
  const auto factor = factor_to_25(compensation, temperature);
  if (!factor) return *factor.outside();
  return practical_salinity(shown / *factor, temperature);
}

}  // namespace tidewright::water
