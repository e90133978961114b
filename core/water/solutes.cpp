#include "core/water/solutes.hpp"

#include "core/water/practical_salinity.hpp"
#include "core/water/reference_salt.hpp"
#include "core/water/seawater.hpp"

namespace tidewright::water {
namespace {

constexpr Range salinity_with_factor{"practical salinity", "", 0.1, 70};

constexpr double mean_molar_mass_g_mol() {
  double mean = 0;
  for (const Solute& solute : solutes) mean += solute.mole_fraction * solute.molar_mass_g_mol;
  return mean;
}

}  // namespace

double mass_fraction(const Solute& solute) {
  return solute.mole_fraction * solute.molar_mass_g_mol / mean_molar_mass_g_mol();
}

Answer<MilligramsPerLitre> salt_per_litre(PracticalSalinity salinity, Celsius temperature) {
  const auto found = density(salinity, temperature);
  if (!found) return *found.outside();
  // g/kg * kg/m3 = g/m3 = mg/L.
  const double mg_l = absolute_salinity(salinity).value * found->value;
  return {MilligramsPerLitre{mg_l}, found.outside()};
}

Answer<MilligramsPerLitre> solute_per_litre(const Solute& solute, PracticalSalinity salinity,
                                            Celsius temperature) {
  const auto salt = salt_per_litre(salinity, temperature);
  if (!salt) return *salt.outside();
  return {*salt * mass_fraction(solute), salt.outside()};
}

Answer<double> dissolved_solids_factor(PracticalSalinity salinity) {
  if (const auto why = outside(salinity_with_factor, salinity.value)) return *why;
  const Celsius reference{25};
  const auto salt = salt_per_litre(salinity, reference);
  const auto conducted = conductivity(salinity, reference);
  const double us_per_ms = 1000;
  return {salt->value / (conducted->value * us_per_ms), conducted.outside()};
}

}  // namespace tidewright::water
