#include "core/water/carbonate.hpp"

#include "core/water/ionic_conductance.hpp"
#include "core/water/pure_water.hpp"

namespace tidewright::water {
namespace {

constexpr Range temperatures{"temperature", "°C", 0, 90};
constexpr Range water_temperatures{"temperature", "°C", 0, 50};
constexpr Range strengths{"ionic strength", "mol/L", 0, 0.1};
constexpr Range alkalinities{"alkalinity", "mg/L CaCO3", 0, 1000};
constexpr Range feed_phs{"pH", "", 5, 8.3};
constexpr Range rejections{"rejection of bicarbonate", "", 0, 0.999};
constexpr Range gases{"carbon dioxide of the air", "ppm", 0, 100000};

constexpr double davies_constant = 0.509;
constexpr double calcium_carbonate_mg_per_meq = 50.0435;
constexpr double carbon_dioxide_grams_per_mole = 44.01;

}  // namespace

Answer<CarbonateConstants> carbonate_constants(Celsius temperature) {
  if (const auto bad = outside(temperatures, temperature.value)) return *bad;
  const double t = temperature.value + 273.15;
  const double log_t = std::log10(t);
  return CarbonateConstants{
      356.3094 + 0.06091964 * t - 21834.37 / t - 126.8339 * log_t + 1684915 / (t * t),
      107.8871 + 0.03252849 * t - 5151.79 / t - 38.92561 * log_t + 563713.9 / (t * t),
      -108.3865 - 0.01985076 * t + 6919.53 / t + 40.45154 * log_t - 669365 / (t * t)};
}

Answer<double> ion_activity(double ionic_strength_mol_l) {
  if (const auto bad = outside(strengths, ionic_strength_mol_l)) return *bad;
  const double root = std::sqrt(ionic_strength_mol_l);
  return std::pow(10, -davies_constant * (root / (1 + root) - 0.3 * ionic_strength_mol_l));
}

Answer<MilliequivalentsPerLitre> equivalents_of_alkalinity(MilligramsPerLitre alkalinity) {
  if (const auto bad = outside(alkalinities, alkalinity.value)) return *bad;
  return MilliequivalentsPerLitre{alkalinity.value / calcium_carbonate_mg_per_meq};
}

Answer<MilligramsPerLitre> carbon_dioxide(MilligramsPerLitre alkalinity, double ph,
                                          Celsius temperature, double ionic_strength_mol_l) {
  const Answer<MilliequivalentsPerLitre> bicarbonate = equivalents_of_alkalinity(alkalinity);
  const Answer<double> activity = ion_activity(ionic_strength_mol_l);
  if (!bicarbonate) return *bicarbonate.outside();
  if (!activity) return *activity.outside();
  if (const auto bad =
          first(outside(feed_phs, ph), outside(water_temperatures, temperature.value))) {
    return *bad;
  }
  const double ratio = std::pow(10, carbonate_constants(temperature)->first_acid - ph);
  return MilligramsPerLitre{bicarbonate->value * *activity * ratio * carbon_dioxide_grams_per_mole};
}

Answer<double> permeate_ph(double feed_ph, double bicarbonate_rejection) {
  if (const auto bad =
          first(outside(feed_phs, feed_ph), outside(rejections, bicarbonate_rejection))) {
    return *bad;
  }
  return feed_ph + std::log10(1 - bicarbonate_rejection);
}

Answer<AirEquilibrium> air_equilibrium(Celsius temperature, double gas_ppm) {
  if (const auto bad =
          first(outside(water_temperatures, temperature.value), outside(gases, gas_ppm))) {
    return *bad;
  }
  const CarbonateConstants constants = *carbonate_constants(temperature);
  const double gas = gas_ppm * 1e-6 * std::pow(10, -constants.solubility);
  const double water = std::pow(10, -*water_ionisation(temperature));
  // As many hydrogen ions as hydroxide and bicarbonate together; carbonate is next to none.
  const double hydrogen = std::sqrt(gas * std::pow(10, -constants.first_acid) + water);
  const double hydroxide = water / hydrogen;
  const double siemens_cm2 = hydrogen * *hydrogen_conductance(temperature) +
                             hydroxide * *hydroxide_conductance(temperature) +
                             (hydrogen - hydroxide) * *bicarbonate_conductance(temperature);
  return AirEquilibrium{MilligramsPerLitre{gas * carbon_dioxide_grams_per_mole * 1000},
                        -std::log10(hydrogen), MicrosiemensPerCm{1000 * siemens_cm2}};
}

}  // namespace tidewright::water
