#include "core/water/carbonate.hpp"

#include "core/water/conductivity_compensation.hpp"
#include "core/water/resin.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

using water::CarbonateConstants;

std::function<double(const Row&)> constant(double CarbonateConstants::*member) {
  return [member](const Row& row) { return (*water::carbonate_constants({row["T_C"]})).*member; };
}

INSTANTIATE_TEST_SUITE_P(
    CarbonateConstants, Handbook,
    testing::ValuesIn(checks(
        "purifier/05_carbonate_constants.csv", "carbonate_constants",
        {{"pK1_PB82", Standing::computed, constant(&CarbonateConstants::first_acid)},
         {"pK2_PB82", Standing::computed, constant(&CarbonateConstants::second_acid)},
         {"pKH_PB82(mol/kg/atm)", Standing::computed, constant(&CarbonateConstants::solubility)},
         {"pK1_Millero06", Standing::computed, constant(&CarbonateConstants::first_acid)},
         {"pK2_Millero06", Standing::computed, constant(&CarbonateConstants::second_acid)}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    CarbonateConstantsByPhreeqc, Handbook,
    testing::ValuesIn(
        checks("purifier/05_carbonate_phreeqc.csv", "carbonate_constants",
               {{"pK1", Standing::library, constant(&CarbonateConstants::first_acid)},
                {"pK2", Standing::library, constant(&CarbonateConstants::second_acid)},
                {"pKH", Standing::library, constant(&CarbonateConstants::solubility)}})),
    place);

double activity(const Row& row) { return or_nan(water::ion_activity(row["ionic_strength"])); }

double dioxide(const Row& row, double ionic_strength) {
  return or_nan(
      water::carbon_dioxide({row["alk_mgL_CaCO3"]}, row["pH"], {row["T_C"]}, ionic_strength));
}

double dioxide_ideal(const Row& row) { return dioxide(row, 0); }
double dioxide_corrected(const Row& row) { return dioxide(row, row["ionic_strength"]); }

double load_of_dioxide(const Row& row) {
  return water::resin_load({0}, {dioxide_corrected(row)}, {0})->anion.value;
}

const std::string loads = "purifier/05_co2_load.csv";

INSTANTIATE_TEST_SUITE_P(EquivalentsOfAlkalinity, Handbook,
                         testing::ValuesIn(checks(loads, "equivalents_of_alkalinity",
                                                  {{"alk_meqL",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(
                                                          water::equivalents_of_alkalinity(
                                                              {row["alk_mgL_CaCO3"]}));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(IonActivity, Handbook,
                         testing::ValuesIn(checks(loads, "ion_activity",
                                                  {{"gamma1", {}, activity}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    CarbonDioxide, Handbook,
    testing::ValuesIn(checks(
        loads, "carbon_dioxide",
        {{"CO2_mgL_ideal", {}, dioxide_ideal},
         {"CO2_mgL_corrected", {}, dioxide_corrected},
         {"CO2_mmolL_ideal", {}, [](const Row& row) { return dioxide_ideal(row) / 44.01; }}})),
    place);

INSTANTIATE_TEST_SUITE_P(LoadOfCarbonDioxide, Handbook,
                         testing::ValuesIn(checks(loads, "resin_load",
                                                  {{"anion_load_meqL", {}, load_of_dioxide}})),
                         place);

// Davies's equation as printed for SPANA by the Royal Institute of Technology, Stockholm (page
// seen): log10 = -A (sqrt I / (1 + sqrt I) - 0.3 I) with A = 0.509 at 25 degrees. At I = 0.1 it is
// -0.509 x (0.316228 / 1.316228 - 0.03) = -0.509 x 0.210253 = -0.107019, and e to 2.302585 times
// that 0.781594.
TEST(IonActivity, IsTheEquationsWhereItsLastTermCounts) {
  EXPECT_NEAR(*water::ion_activity(0.1), 0.781594, 2e-6);
}

const std::string phreeqc = "purifier/05_co2_phreeqc.csv";

INSTANTIATE_TEST_SUITE_P(IonActivityByPhreeqc, Handbook,
                         testing::ValuesIn(checks(phreeqc, "ion_activity",
                                                  {{"gamma1", Standing::library, activity}})),
                         place);

INSTANTIATE_TEST_SUITE_P(CarbonDioxideByPhreeqc, Handbook,
                         testing::ValuesIn(checks(phreeqc, "carbon_dioxide",
                                                  {{"CO2_mgL", Standing::library,
                                                    dioxide_corrected}})),
                         place);

Column published_factor(const std::string& name, double celsius) {
  return {name, Standing::published, [celsius](const Row& row) {
            return or_nan(water::carbon_dioxide({100}, row["pH"], {celsius})) / 100;
          }};
}

INSTANTIATE_TEST_SUITE_P(
    CarbonDioxideFactors, Handbook,
    testing::ValuesIn(checks("purifier/05_co2_factors_published.csv", "carbon_dioxide",
                             {published_factor("T5", 5), published_factor("T10", 10),
                              published_factor("T15", 15), published_factor("T20", 20),
                              published_factor("T25", 25), published_factor("T30", 30),
                              published_factor("T35", 35)})),
    place);

const std::string permeate = "purifier/05_permeate_load.csv";

double feed_dioxide(const Row& row) {
  return or_nan(water::carbon_dioxide({row["feed_alk"]}, row["feed_pH"], {row["T_C"]}));
}

water::ResinLoad load(const Row& row) {
  return *water::resin_load({row["permeate_EC"]}, {feed_dioxide(row)}, {0});
}

INSTANTIATE_TEST_SUITE_P(
    CarbonDioxideOfPermeate, Handbook,
    testing::ValuesIn(
        checks(permeate, "carbon_dioxide",
               {{"CO2_mgL", {}, feed_dioxide},
                {"CO2_load_meqL", {}, [](const Row& row) { return feed_dioxide(row) / 44.01; }}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    LoadOfPermeate, Handbook,
    testing::ValuesIn(
        checks(permeate, "resin_load",
               {{"anion_load_meqL", {}, [](const Row& row) { return load(row).anion.value; }},
                {"anion_vs_ionic",
                 {},
                 [](const Row& row) { return load(row).anion / load(row).cation; }}})),
    place);

INSTANTIATE_TEST_SUITE_P(PermeatePh, Handbook,
                         testing::ValuesIn(checks(permeate, "permeate_ph",
                                                  {{"permeate_pH",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(water::permeate_ph(
                                                          row["feed_pH"], row["HCO3_rejection"]));
                                                    }}})),
                         place);

// What of the feed's bicarbonate the membrane lets through.
INSTANTIATE_TEST_SUITE_P(
    EquivalentsInPermeate, Handbook,
    testing::ValuesIn(checks(permeate, "equivalents_of_alkalinity",
                             {{"HCO3_perm_meqL",
                               {},
                               [](const Row& row) {
                                 return (1 - row["HCO3_rejection"]) *
                                        or_nan(water::equivalents_of_alkalinity({row["feed_alk"]}));
                               }}})),
    place);

water::AirEquilibrium air(const Row& row) {
  return *water::air_equilibrium({row["T_C"]}, row["pCO2_ppm"]);
}

double air_ph(const Row& row) { return air(row).ph; }
double air_conductivity(const Row& row) { return air(row).conductivity.value; }

INSTANTIATE_TEST_SUITE_P(
    AirEquilibrium, Handbook,
    testing::ValuesIn(
        checks("purifier/05_air_equilibrium.csv", "air_equilibrium",
               {{"CO2_mgL", {}, [](const Row& row) { return air(row).carbon_dioxide.value; }},
                {"pH", {}, air_ph},
                {"kappa_T_uS_cm", {}, air_conductivity}})),
    place);

INSTANTIATE_TEST_SUITE_P(AirEquilibriumByALinearMeter, Handbook,
                         testing::ValuesIn(checks("purifier/05_air_equilibrium.csv", "factor_to_25",
                                                  {{"kappa25_linear",
                                                    {},
                                                    [](const Row& row) {
                                                      return air_conductivity(row) *
                                                             or_nan(water::factor_to_25(
                                                                 {}, {row["T_C"]}));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    AirEquilibriumPublished, Handbook,
    testing::ValuesIn(checks("purifier/05_air_equilibrium_published.csv", "air_equilibrium",
                             {{"pH", Standing::published, air_ph},
                              {"kappa_T_uS_cm", Standing::published, air_conductivity}})),
    place);

}  // namespace
}  // namespace tidewright::handbook
