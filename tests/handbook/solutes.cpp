#include "core/water/solutes.hpp"

#include <algorithm>
#include <stdexcept>

#include "core/water/reference_salt.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

const PracticalSalinity standard{35};

const water::Solute& solute(const Row& row) {
  const auto at = std::find_if(water::solutes.begin(), water::solutes.end(),
                               [&](const auto& one) { return one.symbol == row.text("solute"); });
  if (at == water::solutes.end()) throw std::runtime_error(row.text("solute"));
  return *at;
}

double mass_fraction(const Row& row) { return water::mass_fraction(solute(row)); }

double grams_per_kilogram(const Row& row) {
  return mass_fraction(row) * water::absolute_salinity(standard).value;
}

double millimoles_per_kilogram(const Row& row) {
  return 1000 * grams_per_kilogram(row) / solute(row).molar_mass_g_mol;
}

double milligrams_per_litre(const Row& row) {
  return or_nan(water::solute_per_litre(solute(row), standard, Celsius{25}));
}

bool one_solute(const Row& row) { return row.text("solute") != "TOTAL"; }

INSTANTIATE_TEST_SUITE_P(
    MassFraction, Handbook,
    testing::ValuesIn(checks("seawater/18_reference_composition.csv", "mass_fraction",
                             {{"W_mass", Standing::published, mass_fraction},
                              {"g_per_kg_S35", Standing::computed, grams_per_kilogram},
                              {"mmol_per_kg_S35", Standing::computed, millimoles_per_kilogram}},
                             one_solute)),
    place);

INSTANTIATE_TEST_SUITE_P(
    SolutePerLitre, Handbook,
    testing::ValuesIn(checks("seawater/18_reference_composition.csv", "solute_per_litre",
                             {{"mg_per_L_S35_25C", Standing::library, milligrams_per_litre}},
                             one_solute)),
    place);

INSTANTIATE_TEST_SUITE_P(
    AllSolutesPerLitre, Handbook,
    testing::ValuesIn(checks("seawater/18_reference_composition.csv", "salt_per_litre",
                             {{"mg_per_L_S35_25C", Standing::library,
                               [](const Row&) {
                                 return or_nan(water::salt_per_litre(standard, Celsius{25}));
                               }}},
                             [](const Row& row) { return !one_solute(row); })),
    place);

// "seawater S=35"
const std::string seawater = "seawater S=";

double solids_factor(const Row& row) {
  return or_nan(water::dissolved_solids_factor(
      PracticalSalinity{std::stod(row.text("water").substr(seawater.size()))}));
}

INSTANTIATE_TEST_SUITE_P(DissolvedSolidsFactor, Handbook,
                         testing::ValuesIn(checks("seawater/13_tds_factor.csv",
                                                  "dissolved_solids_factor",
                                                  {{"k", Standing::library, solids_factor}},
                                                  [](const Row& row) {
                                                    return row.text("water").starts_with(seawater);
                                                  })),
                         place);

}  // namespace
}  // namespace tidewright::handbook
