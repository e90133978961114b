#include "core/water/seawater.hpp"

#include "core/water/reference_salt.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

using water::absolute_salinity;

double density(const Row& row) {
  const GramsPerKilogram salt = absolute_salinity(PracticalSalinity{row["S_P"]});
  return or_nan(water::density_teos10(salt, Celsius{row["t90_C"]}));
}

bool at_the_surface(const Row& row) { return row["p_dbar"] == 0; }

INSTANTIATE_TEST_SUITE_P(DensityGrid, Handbook,
                         testing::ValuesIn(checks("seawater/04_density_grid.csv", "density_teos10",
                                                  {{"rho_teos10", Standing::library, density}})),
                         place);

INSTANTIATE_TEST_SUITE_P(DensityBesideTheOlderEquation, Handbook,
                         testing::ValuesIn(checks("seawater/03_eos80_check.csv", "density_teos10",
                                                  {{"rho_teos10", Standing::library, density}},
                                                  at_the_surface)),
                         place);

double pure(const Row& row) { return or_nan(water::density_pure(Celsius{row["t90_C"]})); }

INSTANTIATE_TEST_SUITE_P(DensityOfPureWater, Handbook,
                         testing::ValuesIn(checks("seawater/04_density_grid.csv", "density_pure",
                                                  {{"rho_teos10", Standing::library, pure}},
                                                  [](const Row& row) { return row["S_P"] == 0; })),
                         place);

struct State {
  GramsPerKilogram salinity;
  Celsius temperature;
};

State state(const Row& row) { return {{row["SA_g_kg"]}, {row["t_C"]}}; }

double density_of_state(const Row& row) {
  return or_nan(water::density_teos10(state(row).salinity, state(row).temperature));
}

double specific_volume(const Row& row) { return 1 / density_of_state(row); }

double density_pure(const Row& row) { return or_nan(water::density_pure(state(row).temperature)); }

double enthalpy(const Row& row) {
  return or_nan(water::enthalpy(state(row).salinity, state(row).temperature));
}

double heat_capacity_of_state(const Row& row) {
  return or_nan(water::heat_capacity(state(row).salinity, state(row).temperature));
}

const auto published = Standing::published;

INSTANTIATE_TEST_SUITE_P(DensityPrinted, Handbook,
                         testing::ValuesIn(checks("seawater/20_iapws_check.csv", "density_teos10",
                                                  {{"rho_kg_m3", published, density_of_state},
                                                   {"r13_volume_m3_kg", published,
                                                    specific_volume}})),
                         place);

INSTANTIATE_TEST_SUITE_P(DensityOfPureWaterPrinted, Handbook,
                         testing::ValuesIn(checks("seawater/20_iapws_check.csv", "density_pure",
                                                  {{"rho_kg_m3", published, density_pure}})),
                         place);

INSTANTIATE_TEST_SUITE_P(EnthalpyPrinted, Handbook,
                         testing::ValuesIn(checks("seawater/20_iapws_check.csv", "enthalpy",
                                                  {{"h_J_kg", published, enthalpy},
                                                   {"r13_h_J_kg", published, enthalpy}})),
                         place);

INSTANTIATE_TEST_SUITE_P(HeatCapacityPrinted, Handbook,
                         testing::ValuesIn(checks("seawater/20_iapws_check.csv", "heat_capacity",
                                                  {{"cp_J_kgK", published, heat_capacity_of_state},
                                                   {"r13_cp_J_kgK", published,
                                                    heat_capacity_of_state}})),
                         place);

double heat_capacity(const Row& row) {
  const GramsPerKilogram salt = absolute_salinity(PracticalSalinity{row["S_P"]});
  return or_nan(water::heat_capacity(salt, Celsius{row["t_C"]}));
}

// What warms a cubic metre by a degree.
double kilowatt_hours(const Row& row) {
  const GramsPerKilogram salt = absolute_salinity(PracticalSalinity{row["S_P"]});
  const double joules_per_kwh = 3.6e6;
  return heat_capacity(row) * or_nan(water::density_teos10(salt, Celsius{row["t_C"]})) /
         joules_per_kwh;
}

INSTANTIATE_TEST_SUITE_P(HeatCapacity, Handbook,
                         testing::ValuesIn(checks("seawater/16b_heat_capacity.csv", "heat_capacity",
                                                  {{"cp_J_kgK", Standing::library, heat_capacity},
                                                   {"kWh_per_m3_K", Standing::library,
                                                    kilowatt_hours}})),
                         place);

}  // namespace
}  // namespace tidewright::handbook
