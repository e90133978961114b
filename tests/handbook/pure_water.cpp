#include "core/water/pure_water.hpp"

#include <map>

#include "core/water/conductivity_compensation.hpp"
#include "core/water/dissolved_solids.hpp"
#include "core/water/meter_display.hpp"
#include "core/water/water_grade.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

Celsius temperature(const Row& row) { return {row["T_C"]}; }

double conductivity(const Row& row) {
  return or_nan(water::pure_water_conductivity(temperature(row)));
}

const std::string pure = "purifier/03_pure_water.csv";

INSTANTIATE_TEST_SUITE_P(
    PureWater, Handbook,
    testing::ValuesIn(
        checks(pure, "pure_water_conductivity",
               {{"kappa_uS_cm", {}, conductivity},
                {"rho_MOhm_cm", {}, [](const Row& row) { return 1 / conductivity(row); }}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    PureWaterFact, Handbook,
    testing::ValuesIn(checks(
        "purifier/03_pure_water_facts.csv", "pure_water_conductivity",
        {{"kappa_uS_cm", Standing::published, conductivity},
         {"rho_MOhm_cm", Standing::published,
          [](const Row& row) { return 1 / conductivity(row); }}},
        // The second is of water with lye in it; the third is in the table of printed values.
        [](const Row& row) { return row["kappa_uS_cm"] == 0.05501; })),
    place);

double with_salt(const Row& row) {
  return or_nan(water::trace_salt_conductivity({row["NaCl_ug_L"] / 1000}, temperature(row)));
}

double resistivity_with_salt(const Row& row) { return 1 / with_salt(row); }

bool is_pure(const Row& row) { return row["NaCl_ug_L"] == 0; }
bool is_salted(const Row& row) { return row["NaCl_ug_L"] > 0; }

const std::string printed = "purifier/03_pure_water_published.csv";

const std::vector<Column> printed_columns{
    {"rho_MOhm_cm", Standing::published, resistivity_with_salt},
    {"rho_100_MOhm_cm", Standing::published, resistivity_with_salt},
    {"kappa_uS_cm", Standing::published, with_salt}};

INSTANTIATE_TEST_SUITE_P(PureWaterPublished, Handbook,
                         testing::ValuesIn(checks(printed, "pure_water_conductivity",
                                                  printed_columns, is_pure)),
                         place);

INSTANTIATE_TEST_SUITE_P(TraceSaltPublished, Handbook,
                         testing::ValuesIn(checks(printed, "trace_salt_conductivity",
                                                  printed_columns, is_salted)),
                         place);

const std::string trace = "purifier/03_trace_salt.csv";

double trace_conductivity(const Row& row) {
  return or_nan(water::trace_salt_conductivity({row["NaCl_ug_L"] / 1000}, {25}));
}

INSTANTIATE_TEST_SUITE_P(
    TraceSalt, Handbook,
    testing::ValuesIn(
        checks(trace, "trace_salt_conductivity",
               {{"kappa25_uS_cm", {}, trace_conductivity},
                {"rho_MOhm_cm", {}, [](const Row& row) { return 1 / trace_conductivity(row); }}})),
    place);

using water::SolidsScale;

std::function<double(const Row&)> solids(const std::function<double(const Row&)>& conductivity_of,
                                         SolidsScale scale) {
  return [conductivity_of, scale](const Row& row) {
    return or_nan(water::dissolved_solids({conductivity_of(row)}, scale));
  };
}

double at_25(const Row& row) { return row["EC25_uS_cm"]; }

INSTANTIATE_TEST_SUITE_P(
    DissolvedSolids, Handbook,
    testing::ValuesIn(
        checks("purifier/03_ec_tds.csv", "dissolved_solids",
               {{"tds_x0.5", Standing::remembered, solids(at_25, SolidsScale::sodium_chloride)},
                // 640 mg/L per dS/m: FAO Irrigation and Drainage Paper 29.
                {"tds_x0.64", Standing::published, solids(at_25, SolidsScale::irrigation)},
                {"tds_x0.7", Standing::remembered, solids(at_25, SolidsScale::natural_water)}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    DissolvedSolidsOfATrace, Handbook,
    testing::ValuesIn(
        checks(trace, "dissolved_solids",
               {{"meter_ppm_x0.5", {}, solids(trace_conductivity, SolidsScale::sodium_chloride)},
                {"meter_ppm_x0.7", {}, solids(trace_conductivity, SolidsScale::natural_water)}})),
    place);

std::function<double(const Row&)> equivalents(water::IonMix mix) {
  return [mix](const Row& row) { return or_nan(water::equivalents({at_25(row)}, mix)); };
}

INSTANTIATE_TEST_SUITE_P(
    Equivalents, Handbook,
    testing::ValuesIn(checks(
        "purifier/03_ec_tds.csv", "equivalents",
        {{"meqL_EC/100", Standing::remembered, equivalents(water::IonMix::natural_water)},
         {"meqL_NaCl", Standing::remembered, equivalents(water::IonMix::sodium_chloride)},
         {"meqL_NaHCO3", Standing::remembered, equivalents(water::IonMix::sodium_bicarbonate)}})),
    place);

INSTANTIATE_TEST_SUITE_P(EquivalentsByPhreeqc, Handbook,
                         testing::ValuesIn(checks("purifier/03_equivalents_phreeqc.csv",
                                                  "equivalents",
                                                  {{"meq_kg", Standing::library,
                                                    equivalents(water::IonMix::natural_water)}})),
                         place);

std::function<double(const Row&)> display(bool rounds) {
  return [rounds](const Row& row) {
    return or_nan(
        water::shown({trace_conductivity(row)}, {1, rounds, SolidsScale::sodium_chloride}));
  };
}

INSTANTIATE_TEST_SUITE_P(Shown, Handbook,
                         testing::ValuesIn(checks(trace, "shown",
                                                  {{"shown_rounded", {}, display(true)},
                                                   {"shown_truncated", {}, display(false)}})),
                         place);

std::function<double(const Row&)> linear_factor(double percent_per_celsius) {
  return [percent_per_celsius](const Row& row) {
    return or_nan(water::factor_to_25({water::Compensation::Law::linear, percent_per_celsius},
                                      temperature(row)));
  };
}

double linear(const Row& row) { return row["raw_kappa"] * linear_factor(2)(row); }

INSTANTIATE_TEST_SUITE_P(LinearFactor, Handbook,
                         testing::ValuesIn(checks("purifier/03_temp_comp_factors.csv",
                                                  "factor_to_25",
                                                  {{"f25_linear_2.0", {}, linear_factor(2)},
                                                   {"f25_linear_1.91", {}, linear_factor(1.91)}})),
                         place);

INSTANTIATE_TEST_SUITE_P(LinearFactorOnPureWater, Handbook,
                         testing::ValuesIn(checks("purifier/03_compensation.csv", "factor_to_25",
                                                  {{"linear_2pct", {}, linear},
                                                   {"linear_error_pct",
                                                    {},
                                                    [](const Row& row) {
                                                      return 100 *
                                                             (linear(row) / row["true_kappa25"] -
                                                              1);
                                                    }}})),
                         place);

double reagent_limit(const Row& row) {
  const std::map<std::string, water::ReagentWater> types{{"I", water::ReagentWater::type_1},
                                                         {"II", water::ReagentWater::type_2},
                                                         {"III", water::ReagentWater::type_3},
                                                         {"IV", water::ReagentWater::type_4}};
  return water::conductivity_limit(types.at(row.text("type"))).value;
}

INSTANTIATE_TEST_SUITE_P(
    ReagentWater, Handbook,
    testing::ValuesIn(
        checks("purifier/03_astm_d1193.csv", "conductivity_limit",
               {{"kappa25_max_uS_cm", {}, reagent_limit},
                {"rho25_min_MOhm_cm", {}, [](const Row& row) { return 1 / reagent_limit(row); }}})),
    place);

INSTANTIATE_TEST_SUITE_P(PharmaceuticalWater, Handbook,
                         testing::ValuesIn(checks("purifier/03_usp645_stage1.csv",
                                                  "conductivity_limit_uncompensated",
                                                  {{"limit_uS_cm_uncompensated",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(
                                                          water::conductivity_limit_uncompensated(
                                                              {row["T_C(round down to 5)"]}));
                                                    }}})),
                         place);

}  // namespace
}  // namespace tidewright::handbook
