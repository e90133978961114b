#include "core/water/pure_water.hpp"

#include "core/water/ionic_conductance.hpp"

namespace tidewright::water {
namespace {

constexpr Range temperatures{"temperature", "°C", 0, 50};
constexpr Range extended{"temperature", "°C", 0, 100};
constexpr Range traces{"sodium chloride", "mg/L", 0, 20};
constexpr Range raw_conductivities{"conductivity", "µS/cm", 0, 100};

constexpr double sodium_chloride_grams_per_mole = 58.443;

// g/mL. Kell 1975, equation 16; requires 0 to 100 degrees.
double density(double t) {
  const double above =
      999.83952 +
      t * (16.945176 +
           t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return above / (1 + 16.879850e-3 * t) / 1000;
}

// Requires 0 to 100 degrees.
double ionisation(double t) {
  const double kelvin = t + 273.15;
  const double of_density = 13.957 + (-1262.3 + 8.5641e5 / kelvin) / kelvin;
  return 4.098 + (3245.2 + (-2.2362e5 + 3.984e7 / kelvin) / kelvin) / kelvin -
         of_density * std::log10(density(t));
}

}  // namespace

Answer<double> water_ionisation(Celsius temperature) {
  const double t = temperature.value;
  if (const auto bad = outside(extended, t)) return *bad;
  return {ionisation(t), outside(temperatures, t)};
}

Answer<MicrosiemensPerCm> pure_water_conductivity(Celsius temperature) {
  const double t = temperature.value;
  if (const auto bad = outside(extended, t)) return *bad;
  const double ions_per_litre = density(t) * std::pow(10, -ionisation(t) / 2);
  const double conductance =
      *hydrogen_conductance(temperature) + *hydroxide_conductance(temperature);
  return {MicrosiemensPerCm{1000 * ions_per_litre * conductance}, outside(temperatures, t)};
}

Answer<MicrosiemensPerCm> trace_salt_conductivity(MilligramsPerLitre sodium_chloride,
                                                  Celsius temperature) {
  if (const auto bad = outside(traces, sodium_chloride.value)) return *bad;
  const Answer<MicrosiemensPerCm> water = pure_water_conductivity(temperature);
  if (!water) return water;
  const double salt = sodium_chloride.value / sodium_chloride_grams_per_mole *
                      *sodium_chloride_conductance(temperature);
  return {*water + MicrosiemensPerCm{salt}, water.outside()};
}

Answer<MicrosiemensPerCm> compensated_pure_water(MicrosiemensPerCm raw, Celsius temperature) {
  if (const auto bad = outside(raw_conductivities, raw.value)) return *bad;
  const Answer<MicrosiemensPerCm> water = pure_water_conductivity(temperature);
  if (!water) return water;
  const double salt_factor =
      *sodium_chloride_conductance(temperature) / *sodium_chloride_conductance(Celsius{25});
  const MicrosiemensPerCm salt = (raw - *water) / salt_factor;
  return {*pure_water_conductivity(Celsius{25}) + salt,
          first(water.outside(),
                outside(Range{"conductivity", "µS/cm", water->value, 100}, raw.value))};
}

}  // namespace tidewright::water
