#include "core/water/level.hpp"

namespace tidewright::water {
namespace {

constexpr double standard_gravity_m_s2 = 9.80665;
constexpr double pascal_per_bar = 1e5;
constexpr Range gauge_heights{"gauge above the bottom", "m", 0, 100};
constexpr Range densities{"density", "kg/m3", 900, 1300};

double metres_per_bar(KilogramsPerCubicMetre density) {
  return pascal_per_bar / (density.value * standard_gravity_m_s2);
}

}  // namespace

Answer<Metres> depth_from_distance(Metres distance, Metres gauge_above_bottom) {
  const auto found = first(outside(gauge_heights, gauge_above_bottom.value),
                           outside({"distance", "m", 0, gauge_above_bottom.value}, distance.value));
  if (found) return *found;
  return gauge_above_bottom - distance;
}

Answer<Metres> distance_from_depth(Metres depth, Metres gauge_above_bottom) {
  const auto found = first(outside(gauge_heights, gauge_above_bottom.value),
                           outside({"depth", "m", 0, gauge_above_bottom.value}, depth.value));
  if (found) return *found;
  return gauge_above_bottom - depth;
}

Answer<Metres> depth_from_pressure(Bars pressure, KilogramsPerCubicMetre density,
                                   Metres gauge_above_bottom) {
  const auto found =
      first(outside(gauge_heights, gauge_above_bottom.value), outside(densities, density.value),
            outside({"pressure", "bar", 0, 10}, pressure.value));
  if (found) return *found;
  return gauge_above_bottom + Metres{pressure.value * metres_per_bar(density)};
}

Answer<Bars> pressure_from_depth(Metres depth, KilogramsPerCubicMetre density,
                                 Metres gauge_above_bottom) {
  const auto unsound =
      first(outside(gauge_heights, gauge_above_bottom.value), outside(densities, density.value));
  if (unsound) return *unsound;
  const Metres highest = gauge_above_bottom + Metres{10 * metres_per_bar(density)};
  const Range depths{"depth", "m", gauge_above_bottom.value, highest.value};
  if (const auto found = outside(depths, depth.value)) return *found;
  return Bars{(depth - gauge_above_bottom).value / metres_per_bar(density)};
}

}  // namespace tidewright::water
