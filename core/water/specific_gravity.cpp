#include "core/water/specific_gravity.hpp"

#include "core/water/seawater.hpp"
#include "core/water/solve.hpp"

namespace tidewright::water {
namespace {

constexpr double glass_expansion_per_celsius = 25e-6;
constexpr Bracket salinities{0, 115};

// Reading of a hydrometer per kilogram in a cubic metre.
double reading_per_density(Celsius temperature, GravityScale scale) {
  const auto [calibrated, reference] = temperatures(scale);
  const double glass = 1 + glass_expansion_per_celsius * (temperature - calibrated).value;
  return glass / density_pure(reference)->value;
}

}  // namespace

Answer<double> hydrometer_reading(PracticalSalinity salinity, Celsius temperature,
                                  GravityScale scale) {
  const auto found = density(salinity, temperature);
  if (!found) return *found.outside();
  return {found->value * reading_per_density(temperature, scale), found.outside()};
}

Answer<PracticalSalinity> salinity_of_hydrometer(double reading, Celsius temperature,
                                                 GravityScale scale) {
  const auto fresh = hydrometer_reading({salinities.low}, temperature, scale);
  if (!fresh) return *fresh.outside();
  const auto reading_at = [&](double salinity) {
    return *hydrometer_reading({salinity}, temperature, scale);
  };
  const auto found = solve(reading_at, reading, salinities, 1e-9);
  if (!found) {
    return Outside{{"specific gravity", "", *fresh, reading_at(salinities.high)}, reading};
  }
  return {PracticalSalinity{*found}, density({*found}, temperature).outside()};
}

Answer<double> specific_gravity(PracticalSalinity salinity, GravityScale scale) {
  return hydrometer_reading(salinity, temperatures(scale).sample, scale);
}

Answer<PracticalSalinity> salinity_of_gravity(double specific_gravity, GravityScale scale) {
  return salinity_of_hydrometer(specific_gravity, temperatures(scale).sample, scale);
}

}  // namespace tidewright::water
