#include "core/water/osmosis.hpp"

#include "core/water/membrane.hpp"

namespace tidewright::water {
namespace {

constexpr Range solids{"dissolved solids", "mg/L", 0, 60000};
constexpr Range temperatures{"temperature", "°C", 0, 50};
constexpr Range feed_pressures{"feed pressure", "bar", 0, 100};
constexpr Range pressure_drops{"pressure drop", "bar", 0, 100};
constexpr Range permeate_pressures{"permeate pressure", "bar", 0, 100};
constexpr Range driving_pressures{"net driving pressure", "bar", 0.01, 100};

}  // namespace

Answer<Bars> osmotic_pressure(MilligramsPerLitre dissolved_solids, Celsius temperature) {
  if (const auto bad = first(outside(solids, dissolved_solids.value),
                             outside(temperatures, temperature.value))) {
    return *bad;
  }
  const double c = dissolved_solids.value;
  const double t = temperature.value + 320;
  if (c < 20000) return Bars{c * t / 491000};
  return Bars{(0.0117 * c - 34) / 14.23 * t / 345};
}

Answer<Bars> net_driving_pressure(const MembraneConditions& conditions) {
  const Answer<double> concentrated = mean_concentration_factor(conditions.recovery);
  if (const auto bad = first(concentrated.outside(), outside(solids, conditions.feed.value),
                             outside(feed_pressures, conditions.feed_pressure.value),
                             outside(pressure_drops, conditions.pressure_drop.value),
                             outside(permeate_pressures, conditions.permeate_pressure.value))) {
    return *bad;
  }
  const Answer<Bars> osmotic =
      osmotic_pressure(conditions.feed * *concentrated, conditions.temperature);
  if (!osmotic) return *osmotic.outside();
  const Bars left = conditions.feed_pressure - conditions.pressure_drop / 2 -
                    conditions.permeate_pressure - *osmotic;
  if (const auto bad = outside(driving_pressures, left.value)) return *bad;
  return left;
}

}  // namespace tidewright::water
