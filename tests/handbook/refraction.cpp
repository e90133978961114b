#include "core/water/refraction.hpp"

#include "core/water/brine_scale.hpp"
#include "core/water/reference_salt.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

double millard_seaver(const Row& row) {
  return or_nan(water::refractive_index(PracticalSalinity{row["S"]}, Celsius{row["t_C"]}));
}

double quan_fry(const Row& row) {
  return or_nan(water::refractive_index_quan_fry(PracticalSalinity{row["S"]}, Celsius{row["t_C"]}));
}

double quan_fry_589_3(const Row& row) {
  return or_nan(
      water::refractive_index_quan_fry(PracticalSalinity{row["S"]}, Celsius{row["t_C"]}, 589.3));
}

INSTANTIATE_TEST_SUITE_P(
    RefractiveIndexPrinted, Handbook,
    testing::ValuesIn(checks("seawater/08_refractive_check.csv", "refractive_index",
                             {{"n_pub_MS1990", Standing::published, millard_seaver},
                              {"n_ms", Standing::computed, millard_seaver}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    RefractiveIndexGrid, Handbook,
    testing::ValuesIn(checks("seawater/09_refractive_grid.csv", "refractive_index",
                             {{"n_ms_589.26", Standing::computed, millard_seaver}})),
    place);

INSTANTIATE_TEST_SUITE_P(RefractiveIndexQuanFry, Handbook,
                         testing::ValuesIn(checks("seawater/08_refractive_check.csv",
                                                  "refractive_index_quan_fry",
                                                  {{"n_qf", Standing::computed, quan_fry}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    RefractiveIndexQuanFryGrid, Handbook,
    testing::ValuesIn(checks("seawater/09_refractive_grid.csv", "refractive_index_quan_fry",
                             {{"n_qf_589.26", Standing::computed, quan_fry},
                              {"n_qf_589.3", Standing::computed, quan_fry_589_3}})),
    place);

// The other fit against the printed table, no further off than table 08 says.
INSTANTIATE_TEST_SUITE_P(
    RefractiveIndexQuanFryPrinted, Handbook,
    testing::ValuesIn(checks("seawater/21_refractive_across.csv", "refractive_index_quan_fry",
                             {{"n_pub_MS1990", Standing::published, quan_fry}})),
    place);

double of_index(const Row& row) {
  return or_nan(water::salinity_of_refraction(row["n_pub_MS1990"], Celsius{row["t_C"]}));
}

INSTANTIATE_TEST_SUITE_P(SalinityOfRefraction, Handbook,
                         testing::ValuesIn(checks("seawater/21_refractive_across.csv",
                                                  "salinity_of_refraction",
                                                  {{"S", Standing::published, of_index}},
                                                  [](const Row& row) { return row["S"] > 0; })),
                         place);

double brine(const Row& row) {
  return or_nan(water::brine_index(GramsPerKilogram{row["mass_pct_NaCl"] * 10}));
}

INSTANTIATE_TEST_SUITE_P(BrineIndexPrinted, Handbook,
                         testing::ValuesIn(checks("seawater/10_nacl_crc.csv", "brine_index",
                                                  {{"nD_20", Standing::published, brine}})),
                         place);

double index_at_20(const Row& row) {
  return or_nan(water::refractive_index(PracticalSalinity{row["S_P"]}, Celsius{20}));
}

double brine_reading(const Row& row) {
  return or_nan(water::brine_scale_reading(PracticalSalinity{row["S_P"]}));
}

double brine_error(const Row& row) {
  return brine_reading(row) - water::absolute_salinity(PracticalSalinity{row["S_P"]}).value;
}

INSTANTIATE_TEST_SUITE_P(IndexAt20, Handbook,
                         testing::ValuesIn(checks("seawater/11_brine_scale_error.csv",
                                                  "refractive_index",
                                                  {{"nD_20", Standing::computed, index_at_20}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    BrineScale, Handbook,
    testing::ValuesIn(checks("seawater/11_brine_scale_error.csv", "brine_scale_reading",
                             {{"brine_scale_ppt", Standing::computed, brine_reading},
                              {"error_ppt", Standing::computed, brine_error}})),
    place);

// Along straight lines between the values of the printed table of brine. At 30, 35 and 40
// seawater's index is printed as well (table 08); in between it is by the formula.
bool is_printed(const Row& row) { return row["S_P"] == 30 || row["S_P"] == 35 || row["S_P"] == 40; }
bool is_between(const Row& row) { return !is_printed(row); }
bool is_salty(const Row& row) { return row["S_P"] > 0 && is_between(row); }

double by_interpolated(const Row& row) {
  return or_nan(water::salinity_of_brine_scale(GramsPerKilogram{row["brine_ppt_interp"]}));
}

const std::string errors = "seawater/11_brine_scale_error.csv";

INSTANTIATE_TEST_SUITE_P(BrineScaleByPrintedTables, Handbook,
                         testing::ValuesIn(checks(errors, "brine_scale_reading",
                                                  {{"brine_ppt_interp", Standing::published,
                                                    brine_reading}},
                                                  is_printed)),
                         place);

INSTANTIATE_TEST_SUITE_P(BrineScaleByTheTable, Handbook,
                         testing::ValuesIn(checks(errors, "brine_scale_reading",
                                                  {{"brine_ppt_interp", Standing::computed,
                                                    brine_reading}},
                                                  is_between)),
                         place);

INSTANTIATE_TEST_SUITE_P(SalinityOfBrineScaleByPrintedTables, Handbook,
                         testing::ValuesIn(checks(errors, "salinity_of_brine_scale",
                                                  {{"S_P", Standing::published, by_interpolated}},
                                                  is_printed)),
                         place);

INSTANTIATE_TEST_SUITE_P(SalinityOfBrineScaleByTheTable, Handbook,
                         testing::ValuesIn(checks(errors, "salinity_of_brine_scale",
                                                  {{"S_P", Standing::computed, by_interpolated}},
                                                  is_salty)),
                         place);

// The scale and its inverse against the one mixture that is printed.
INSTANTIATE_TEST_SUITE_P(
    CalibrationFluid, Handbook,
    testing::ValuesIn(checks("seawater/22_calibration_fluid.csv", "brine_scale_reading",
                             {{"nacl_g_kg", Standing::published, brine_reading}})),
    place);

INSTANTIATE_TEST_SUITE_P(SalinityOfCalibrationFluid, Handbook,
                         testing::ValuesIn(checks("seawater/22_calibration_fluid.csv",
                                                  "salinity_of_brine_scale",
                                                  {{"S_P", Standing::published,
                                                    [](const Row& row) {
                                                      return or_nan(water::salinity_of_brine_scale(
                                                          GramsPerKilogram{row["nacl_g_kg"]}));
                                                    }}})),
                         place);

}  // namespace
}  // namespace tidewright::handbook
