#include "core/water/sodium_hazard.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace tidewright::water {
namespace {

constexpr Range sodiums{"sodium", "meq/L", 0, 500};
constexpr Range calciums{"calcium", "meq/L", 0, 500};
constexpr Range magnesiums{"magnesium", "meq/L", 0, 500};
constexpr Range bicarbonates{"bicarbonate", "meq/L", 0, 500};
constexpr Range some_calciums{"calcium", "meq/L", 0.001, 500};
constexpr Range hardnesses{"calcium and magnesium", "meq/L", 0.01, 1000};
constexpr Range ratios{"bicarbonate / calcium", "", 0.25, 5};
constexpr Range any_ratios{"bicarbonate / calcium", "", 0, 1e6};
constexpr Range conductivities{"conductivity", "dS/m", 0.1, 8};
constexpr Range any_conductivities{"conductivity", "dS/m", 0, 20};
constexpr Range soils{"conductivity of the soil's water", "dS/m", 0.1, 40};
constexpr Range leachings{"leaching requirement", "", 0, 0.99};

constexpr std::size_t rows = 11;
constexpr std::size_t columns = 12;
constexpr std::array<double, rows> row_ratios{0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 5};
constexpr std::array<double, columns> column_conductivities{0.1, 0.2, 0.3, 0.5, 0.7, 1,
                                                            1.5, 2,   3,   4,   6,   8};
// FAO 29 rev. 1, table 11; from Suarez 1981, Soil Sci. Soc. Am. J. 45:469.
constexpr std::array<std::array<double, columns>, rows> calcium_left{{
    {4.51, 4.65, 4.76, 4.92, 5.06, 5.22, 5.44, 5.62, 5.91, 6.15, 6.52, 6.82},
    {2.84, 2.93, 3.00, 3.10, 3.19, 3.29, 3.43, 3.54, 3.72, 3.87, 4.11, 4.30},
    {2.17, 2.24, 2.29, 2.37, 2.43, 2.51, 2.62, 2.70, 2.84, 2.95, 3.14, 3.28},
    {1.79, 1.85, 1.89, 1.96, 2.01, 2.09, 2.16, 2.23, 2.35, 2.44, 2.59, 2.71},
    {1.54, 1.59, 1.63, 1.68, 1.73, 1.78, 1.86, 1.92, 2.02, 2.10, 2.23, 2.33},
    {1.37, 1.41, 1.44, 1.49, 1.53, 1.58, 1.65, 1.70, 1.79, 1.86, 1.97, 2.07},
    {1.23, 1.27, 1.30, 1.35, 1.38, 1.43, 1.49, 1.54, 1.62, 1.68, 1.78, 1.86},
    {1.13, 1.16, 1.19, 1.23, 1.26, 1.31, 1.36, 1.40, 1.48, 1.54, 1.63, 1.70},
    {0.97, 1.00, 1.02, 1.06, 1.09, 1.12, 1.17, 1.21, 1.27, 1.32, 1.40, 1.47},
    {0.85, 0.89, 0.91, 0.94, 0.96, 1.00, 1.04, 1.07, 1.13, 1.17, 1.24, 1.30},
    {0.61, 0.63, 0.65, 0.67, 0.69, 0.71, 0.74, 0.76, 0.80, 0.83, 0.88, 0.93},
}};

struct Between {
  std::size_t below;
  double part;  // of the way from there to the next
};

template <std::size_t N>
Between place(const std::array<double, N>& points, double x) {
  const auto next = std::upper_bound(points.begin() + 1, points.end() - 1, x);
  const auto below = static_cast<std::size_t>(next - points.begin()) - 1;
  const double width = points[below + 1] - points[below];
  return {below, std::clamp((x - points[below]) / width, 0.0, 1.0)};
}

std::optional<Outside> unfit(const IrrigationIons& ions) {
  return first(outside(sodiums, ions.sodium.value), outside(calciums, ions.calcium.value),
               outside(magnesiums, ions.magnesium.value),
               outside(bicarbonates, ions.bicarbonate.value));
}

}  // namespace

Answer<double> sodium_adsorption_ratio(const IrrigationIons& ions) {
  const double hardness = (ions.calcium + ions.magnesium).value;
  if (const auto bad = first(unfit(ions), outside(hardnesses, hardness))) return *bad;
  return ions.sodium.value / std::sqrt(hardness / 2);
}

Answer<MilliequivalentsPerLitre> calcium_in_soil_water(double bicarbonate_over_calcium,
                                                       MillisiemensPerCm conductivity) {
  if (const auto bad = first(outside(any_ratios, bicarbonate_over_calcium),
                             outside(any_conductivities, conductivity.value))) {
    return *bad;
  }
  const Between row = place(row_ratios, bicarbonate_over_calcium);
  const Between column = place(column_conductivities, conductivity.value);
  const auto along = [&](const std::array<double, columns>& values) {
    return std::lerp(values[column.below], values[column.below + 1], column.part);
  };
  const double left =
      std::lerp(along(calcium_left[row.below]), along(calcium_left[row.below + 1]), row.part);
  return {MilliequivalentsPerLitre{left}, first(outside(ratios, bicarbonate_over_calcium),
                                                outside(conductivities, conductivity.value))};
}

Answer<double> adjusted_sodium_adsorption_ratio(const IrrigationIons& ions,
                                                MillisiemensPerCm conductivity) {
  if (const auto bad = first(unfit(ions), outside(some_calciums, ions.calcium.value))) return *bad;
  const Answer<MilliequivalentsPerLitre> calcium =
      calcium_in_soil_water(ions.bicarbonate / ions.calcium, conductivity);
  if (!calcium) return *calcium.outside();
  return {ions.sodium.value / std::sqrt((*calcium + ions.magnesium).value / 2), calcium.outside()};
}

Answer<MilliequivalentsPerLitre> residual_sodium_carbonate(const IrrigationIons& ions) {
  if (const auto bad = unfit(ions)) return *bad;
  return ions.bicarbonate - ions.calcium - ions.magnesium;
}

Answer<double> leaching_requirement(MillisiemensPerCm water, MillisiemensPerCm soil_borne) {
  if (const auto bad =
          first(outside(any_conductivities, water.value), outside(soils, soil_borne.value))) {
    return *bad;
  }
  // More than all of the water, where the soil would have to bear less than a fifth of it.
  const double beyond = 1e6;
  const double drained = 5 * soil_borne.value - water.value;
  const double requirement = drained > 0 ? water.value / drained : beyond;
  if (const auto bad = outside(leachings, requirement)) return *bad;
  return requirement;
}

}  // namespace tidewright::water
