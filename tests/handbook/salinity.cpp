#include "core/water/practical_salinity.hpp"
#include "core/water/temperature_scale.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

double of_ratio(const Row& row) {
  const Celsius temperature = water::from_ipts_68(row["t68_C"]);
  return or_nan(water::salinity_of_ratio(row["Rt_indep"], temperature));
}

// Three of the four rows are of deep water: the ratio Rt of the row is what is left of it at the
// surface.
INSTANTIATE_TEST_SUITE_P(SalinityOfRatio, Handbook,
                         testing::ValuesIn(checks("seawater/01_pss78_check.csv",
                                                  "salinity_of_ratio",
                                                  {{"S_pub", Standing::published, of_ratio},
                                                   {"S_indep", Standing::computed, of_ratio},
                                                   {"S_gsw", Standing::library, of_ratio}})),
                         place);

double of_conductivity_ratio(const Row& row) {
  const auto conductivity = water::standard_seawater_conductivity * row["R"];
  return or_nan(water::practical_salinity(conductivity, water::from_ipts_68(row["t68_C"])));
}

INSTANTIATE_TEST_SUITE_P(
    SalinityOfConductivityPrinted, Handbook,
    testing::ValuesIn(checks("seawater/01_pss78_check.csv", "practical_salinity",
                             {{"S_pub", Standing::published, of_conductivity_ratio}},
                             [](const Row& row) { return row["p_dbar"] == 0; })),
    place);

double salinity(const Row& row) {
  return or_nan(
      water::practical_salinity(MillisiemensPerCm{row["C_mS_cm"]}, Celsius{row["t90_C"]}));
}

double conductivity(const Row& row) {
  return or_nan(water::conductivity(PracticalSalinity{row["S_P"]}, Celsius{row["t90_C"]}));
}

INSTANTIATE_TEST_SUITE_P(SalinityGrid, Handbook,
                         testing::ValuesIn(checks("seawater/02_pss78_grid.csv",
                                                  "practical_salinity",
                                                  {{"S_P", Standing::library, salinity}})),
                         place);

INSTANTIATE_TEST_SUITE_P(ConductivityGrid, Handbook,
                         testing::ValuesIn(checks("seawater/02_pss78_grid.csv", "conductivity",
                                                  {{"C_mS_cm", Standing::library, conductivity}})),
                         place);

INSTANTIATE_TEST_SUITE_P(ConductivityOfDilutedSeawater, Handbook,
                         testing::ValuesIn(checks("seawater/02b_low_salinity_hill.csv",
                                                  "conductivity",
                                                  {{"C_mS_cm", Standing::library, conductivity}})),
                         place);

TEST(SalinityGrid, SaysWhatIsExtrapolatedAsTheTableDoes) {
  const Table table = read_table("seawater/02_pss78_grid.csv");
  for (const Table::Line& line : table.lines) {
    const Row row(table, line);
    const auto answer = water::conductivity(PracticalSalinity{row["S_P"]}, Celsius{row["t90_C"]});
    EXPECT_EQ(answer.in_range(), row.text("range") == "in") << row.number();
  }
}

}  // namespace
}  // namespace tidewright::handbook
