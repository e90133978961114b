#include "core/water/irrigation.hpp"

#include <array>
#include <limits>

namespace tidewright::water {
namespace {

constexpr Range values{"value", "", 0, 1e6};
constexpr Range adsorption_ratios{"sodium adsorption ratio", "", 0, 40};
constexpr Range conductivities{"conductivity", "dS/m", 0, 20};
constexpr Range phs{"pH", "", 0, 14};

constexpr double never = std::numeric_limits<double>::max();

// Above `slight` the use is restricted slightly to moderately, above `severe` severely.
struct Limits {
  double slight;
  double severe;
};

Limits limits(IrrigationItem item) {
  switch (item) {
    case IrrigationItem::conductivity:
      return {0.7, 3};
    case IrrigationItem::dissolved_solids:
      return {450, 2000};
    case IrrigationItem::sodium_surface:
      return {3, 9};
    case IrrigationItem::sodium_sprinkler:
    case IrrigationItem::chloride_sprinkler:
      return {3, never};
    case IrrigationItem::chloride_surface:
      return {4, 10};
    case IrrigationItem::boron:
      return {0.7, 3};
    case IrrigationItem::nitrate_nitrogen:
      return {5, 30};
    case IrrigationItem::bicarbonate_sprinkler:
      break;
  }
  return {1.5, 8.5};
}

// For adsorption ratios up to `ratio_max`: below `severe` dS/m severe, below `none` slight.
struct Infiltration {
  double ratio_max;
  double none;
  double severe;
};

constexpr std::array<Infiltration, 5> infiltration{
    {{3, 0.7, 0.2}, {6, 1.2, 0.3}, {12, 1.9, 0.5}, {20, 2.9, 1.3}, {40, 5.0, 2.9}}};

}  // namespace

Answer<Restriction> restriction(IrrigationItem item, double value) {
  if (const auto bad = outside(values, value)) return *bad;
  const Limits limit = limits(item);
  if (value > limit.severe) return Restriction::severe;
  return value > limit.slight ? Restriction::slight_to_moderate : Restriction::none;
}

Answer<Restriction> infiltration_restriction(double sodium_adsorption_ratio,
                                             MillisiemensPerCm conductivity) {
  if (const auto bad = first(outside(adsorption_ratios, sodium_adsorption_ratio),
                             outside(conductivities, conductivity.value))) {
    return *bad;
  }
  Infiltration limit = infiltration.back();
  for (const Infiltration& row : infiltration) {
    if (sodium_adsorption_ratio <= row.ratio_max) {
      limit = row;
      break;
    }
  }
  if (conductivity.value < limit.severe) return Restriction::severe;
  return conductivity.value < limit.none ? Restriction::slight_to_moderate : Restriction::none;
}

Answer<bool> irrigation_ph_is_normal(double ph) {
  if (const auto bad = outside(phs, ph)) return *bad;
  return ph >= 6.5 && ph <= 8.4;
}

}  // namespace tidewright::water
