#include "core/water/brine_scale.hpp"

#include "core/water/refraction.hpp"
#include "core/water/solve.hpp"

namespace tidewright::water {
namespace {

constexpr Range brine_made_for{"sodium chloride", "g/kg", 0, 60};
constexpr Celsius scale_temperature{20};

double index_of_brine(double g_kg) {
  const double pure = *refractive_index({0}, scale_temperature);
  const double percent = g_kg / 10;
  return pure + percent * (1.758825e-3 - percent * 5.768e-7);
}

}  // namespace

Answer<double> brine_index(GramsPerKilogram sodium_chloride) {
  if (const auto why = outside(brine_made_for, sodium_chloride.value)) return *why;
  return index_of_brine(sodium_chloride.value);
}

Answer<GramsPerKilogram> brine_scale_reading(PracticalSalinity salinity) {
  const auto index = refractive_index(salinity, scale_temperature);
  if (!index) return *index.outside();
  const auto found = solve(index_of_brine, *index, {brine_made_for.low, brine_made_for.high}, 1e-9);
  if (!found) {
    const auto highest = salinity_of_brine_scale({brine_made_for.high});
    return Outside{{"practical salinity", "", 0, highest->value}, salinity.value};
  }
  return {GramsPerKilogram{*found}, index.outside()};
}

Answer<PracticalSalinity> salinity_of_brine_scale(GramsPerKilogram reading) {
  const auto index = brine_index(reading);
  if (!index) return *index.outside();
  return salinity_of_refraction(*index, scale_temperature);
}

}  // namespace tidewright::water
