// What the conductivity of pure water is made of, and its compensation.
#include "core/water/ionic_conductance.hpp"
#include "core/water/pure_water.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

Celsius temperature(const Row& row) { return {row["T_C"]}; }

std::function<double(const Row&)> at(water::Answer<double> (*ours)(Celsius)) {
  return [ours](const Row& row) { return or_nan(ours(temperature(row))); };
}

const auto hydrogen = at(water::hydrogen_conductance);
const auto hydroxide = at(water::hydroxide_conductance);
const auto bicarbonate = at(water::bicarbonate_conductance);
const auto sodium_chloride = at(water::sodium_chloride_conductance);
const auto ionisation = at(water::water_ionisation);

const std::string pure = "purifier/03_pure_water.csv";
const std::string phreeqc = "purifier/03_ionic_conductance_phreeqc.csv";

INSTANTIATE_TEST_SUITE_P(HydrogenConductance, Handbook,
                         testing::ValuesIn(checks(pure, "hydrogen_conductance",
                                                  {{"lambda_H", Standing::remembered, hydrogen}})),
                         place);

INSTANTIATE_TEST_SUITE_P(HydrogenConductancePublished, Handbook,
                         testing::ValuesIn(checks("purifier/03_ionic_conductance_published.csv",
                                                  "hydrogen_conductance",
                                                  {{"hydrogen", Standing::published, hydrogen}})),
                         place);

INSTANTIATE_TEST_SUITE_P(HydrogenConductanceByPhreeqc, Handbook,
                         testing::ValuesIn(checks(phreeqc, "hydrogen_conductance",
                                                  {{"hydrogen", Standing::library, hydrogen}})),
                         place);

INSTANTIATE_TEST_SUITE_P(HydroxideConductance, Handbook,
                         testing::ValuesIn(checks(pure, "hydroxide_conductance",
                                                  {{"lambda_OH", Standing::remembered,
                                                    hydroxide}})),
                         place);

INSTANTIATE_TEST_SUITE_P(HydroxideConductanceByPhreeqc, Handbook,
                         testing::ValuesIn(checks(phreeqc, "hydroxide_conductance",
                                                  {{"hydroxide", Standing::library, hydroxide}})),
                         place);

INSTANTIATE_TEST_SUITE_P(SodiumChlorideConductanceByPhreeqc, Handbook,
                         testing::ValuesIn(checks(phreeqc, "sodium_chloride_conductance",
                                                  {{"sodium_chloride", Standing::library,
                                                    sodium_chloride}})),
                         place);

INSTANTIATE_TEST_SUITE_P(BicarbonateConductanceByPhreeqc, Handbook,
                         testing::ValuesIn(checks(phreeqc, "bicarbonate_conductance",
                                                  {{"bicarbonate", Standing::library, bicarbonate}},
                                                  [](const Row& row) {
                                                    return row["T_C"] >= 10 && row["T_C"] <= 35;
                                                  })),
                         place);

INSTANTIATE_TEST_SUITE_P(WaterIonisation, Handbook,
                         testing::ValuesIn(checks("purifier/05_carbonate_constants.csv",
                                                  "water_ionisation",
                                                  {{"pKw_MF81", Standing::computed, ionisation}})),
                         place);

INSTANTIATE_TEST_SUITE_P(WaterIonisationAsInPureWater, Handbook,
                         testing::ValuesIn(checks(pure, "water_ionisation",
                                                  {{"pKw", {}, ionisation}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    WaterIonisationPublished, Handbook,
    testing::ValuesIn(checks("purifier/03_water_ionisation_published.csv", "water_ionisation",
                             {{"pKw_MF81_printed", Standing::published, ionisation},
                              {"pKw_BL06_printed", Standing::published, ionisation}})),
    place);

INSTANTIATE_TEST_SUITE_P(WaterIonisationByPhreeqc, Handbook,
                         testing::ValuesIn(checks("purifier/03_water_ionisation_phreeqc.csv",
                                                  "water_ionisation",
                                                  {{"pKw", Standing::library, ionisation}})),
                         place);

INSTANTIATE_TEST_SUITE_P(WaterIonisationByIapws, Handbook,
                         testing::ValuesIn(checks("purifier/03_water_ionisation_iapws.csv",
                                                  "water_ionisation",
                                                  {{"pKw", Standing::library, ionisation}})),
                         place);

double with_salt(const Row& row) {
  return or_nan(water::trace_salt_conductivity({row["NaCl_ug_L"] / 1000}, temperature(row)));
}

bool is_pure(const Row& row) { return row["NaCl_ug_L"] == 0; }
bool is_salted(const Row& row) { return row["NaCl_ug_L"] > 0; }

const std::string traces = "purifier/03_trace_salt_phreeqc.csv";

INSTANTIATE_TEST_SUITE_P(PureWaterByPhreeqc, Handbook,
                         testing::ValuesIn(checks(traces, "pure_water_conductivity",
                                                  {{"kappa_uS_cm", Standing::library,
                                                    [](const Row& row) {
                                                      return or_nan(water::pure_water_conductivity(
                                                          temperature(row)));
                                                    }}},
                                                  is_pure)),
                         place);

INSTANTIATE_TEST_SUITE_P(TraceSaltByPhreeqc, Handbook,
                         testing::ValuesIn(checks(traces, "trace_salt_conductivity",
                                                  {{"kappa_uS_cm", Standing::library, with_salt}},
                                                  is_salted)),
                         place);

std::function<double(const Row&)> compensated(const std::string& raw) {
  return [raw](const Row& row) {
    return or_nan(water::compensated_pure_water({row[raw]}, temperature(row)));
  };
}

INSTANTIATE_TEST_SUITE_P(CompensatedPureWater, Handbook,
                         testing::ValuesIn(checks("purifier/03_compensation.csv",
                                                  "compensated_pure_water",
                                                  {{"nonlinear", {}, compensated("raw_kappa")}})),
                         place);

INSTANTIATE_TEST_SUITE_P(CompensatedPureWaterByPhreeqc, Handbook,
                         testing::ValuesIn(checks(traces, "compensated_pure_water",
                                                  {{"kappa25_uS_cm", Standing::library,
                                                    compensated("kappa_uS_cm")}})),
                         place);

// Another formula for the same, as printed.
INSTANTIATE_TEST_SUITE_P(
    CompensatedPureWaterByMarshAndStokes, Handbook,
    testing::ValuesIn(checks("purifier/03_compensation_marsh_stokes.csv", "compensated_pure_water",
                             {{"kappa25_uS_cm", Standing::computed, compensated("raw_uS_cm")}})),
    place);

}  // namespace
}  // namespace tidewright::handbook
