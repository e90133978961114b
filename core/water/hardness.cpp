#include "core/water/hardness.hpp"

#include "core/base/customary_units.hpp"

namespace tidewright::water {
namespace {

constexpr Range hardnesses{"hardness", "mg/L CaCO3", 0, 10000};
constexpr Range temperatures{"temperature", "°C", 0, 90};
constexpr Range solids{"dissolved solids", "mg/L", 1, 10000};
constexpr Range calciums{"calcium hardness", "mg/L CaCO3", 1, 5000};
constexpr Range alkalinities{"alkalinity", "mg/L CaCO3", 1, 5000};
constexpr Range phs{"pH", "", 4, 11};

std::optional<Outside> unfit(const ScaleWater& water) {
  return first(outside(temperatures, water.temperature.value),
               outside(solids, water.dissolved_solids.value),
               outside(calciums, water.calcium.value),
               outside(alkalinities, water.alkalinity.value), outside(phs, water.ph));
}

}  // namespace

Answer<Hardness> hardness_class(MilligramsPerLitre calcium_carbonate) {
  const double hardness = calcium_carbonate.value;
  if (const auto bad = outside(hardnesses, hardness)) return *bad;
  if (hardness <= 60) return Hardness::soft;
  if (hardness <= 120) return Hardness::moderately_hard;
  return hardness <= 180 ? Hardness::hard : Hardness::very_hard;
}

Answer<double> grains_per_gallon(MilligramsPerLitre calcium_carbonate) {
  if (const auto bad = outside(hardnesses, calcium_carbonate.value)) return *bad;
  return calcium_carbonate.value / mg_l_per_grain_per_gallon;
}

Answer<ScaleWater> concentrated(const ScaleWater& water, double factor) {
  if (const auto bad =
          first(unfit(water), outside(Range{"concentrate / feed", "", 1, 100}, factor))) {
    return *bad;
  }
  return ScaleWater{water.temperature, water.dissolved_solids * factor, water.calcium * factor,
                    water.alkalinity * factor, water.ph + std::log10(factor)};
}

Answer<Langelier> langelier(const ScaleWater& water) {
  if (const auto bad = unfit(water)) return *bad;
  const double of_solids = (std::log10(water.dissolved_solids.value) - 1) / 10;
  const double of_temperature = 34.55 - 13.12 * std::log10(water.temperature.value + 273);
  const double of_calcium = std::log10(water.calcium.value) - 0.4;
  const double of_alkalinity = std::log10(water.alkalinity.value);
  const double saturation_ph = 9.3 + of_solids + of_temperature - of_calcium - of_alkalinity;
  return Langelier{saturation_ph, water.ph - saturation_ph};
}

}  // namespace tidewright::water
