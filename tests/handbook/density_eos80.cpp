#include "core/water/density_eos80.hpp"

#include "core/water/seawater.hpp"
#include "core/water/temperature_scale.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

double older_density(const Row& row) {
  const Celsius temperature = water::from_ipts_68(row["t68_C"]);
  return or_nan(water::density_eos80(PracticalSalinity{row["S_P"]}, temperature));
}

double density(const Row& row) {
  return or_nan(water::density_eos80(PracticalSalinity{row["S_P"]}, Celsius{row["t90_C"]}));
}

INSTANTIATE_TEST_SUITE_P(DensityEos80Printed, Handbook,
                         testing::ValuesIn(checks("seawater/03_eos80_check.csv", "density_eos80",
                                                  {{"rho_pub", Standing::published, older_density}},
                                                  [](const Row& row) {
                                                    return row["p_dbar"] == 0;
                                                  })),
                         place);

INSTANTIATE_TEST_SUITE_P(DensityEos80Grid, Handbook,
                         testing::ValuesIn(checks("seawater/04_density_grid.csv", "density_eos80",
                                                  {{"rho_eos80", Standing::computed, density}})),
                         place);

// Two equations, made from different measurements: no more apart than table 04 says.
TEST(Density, OfTwoEquationsAgrees) {
  const Table table = read_table("seawater/04_density_grid.csv");
  for (const Table::Line& line : table.lines) {
    const Row row(table, line);
    const Celsius temperature{row["t90_C"]};
    const PracticalSalinity salinity{row["S_P"]};
    if (temperature.value > 40) continue;
    EXPECT_NEAR(water::density(salinity, temperature)->value,
                water::density_eos80(salinity, temperature)->value, 0.009)
        << row.number();
  }
}

}  // namespace
}  // namespace tidewright::handbook
