#include "core/water/resin.hpp"

#include "core/base/customary_units.hpp"
#include "core/water/breakthrough.hpp"
#include "core/water/lead_lag.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

const std::string runs = "purifier/04_resin_run.csv";

water::ResinLoad load(const Row& row) {
  return *water::resin_load({row["permeate_EC"]}, {row["CO2_mgL"]}, {row["SiO2_mgL"]});
}

water::ResinRun run(const Row& row) {
  const water::ResinBed bed{
      {row["resin_L"]}, row["q_cation_eqL"], row["q_anion_eqL"], row["utilisation"]};
  return *water::resin_run(bed, load(row));
}

double litres(const Row& row) { return run(row).litres.value; }

INSTANTIATE_TEST_SUITE_P(
    ResinLoad, Handbook,
    testing::ValuesIn(
        checks(runs, "resin_load",
               {{"cation_load_meqL", {}, [](const Row& row) { return load(row).cation.value; }},
                {"anion_load_meqL", {}, [](const Row& row) { return load(row).anion.value; }}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    ResinRun, Handbook,
    testing::ValuesIn(
        checks(runs, "resin_run",
               {{"litres_cation", {}, [](const Row& row) { return run(row).by_cation.value; }},
                {"litres_anion", {}, [](const Row& row) { return run(row).by_anion.value; }},
                {"litres", {}, litres},
                {"days_at_300_Ld", {}, [](const Row& row) { return litres(row) / 300; }}})),
    place);

TEST(ResinRun, IsLimitedByTheSideThatTheTableSays) {
  const Table table = read_table(runs);
  for (const Table::Line& line : table.lines) {
    const Row row(table, line);
    EXPECT_EQ(run(row).limited_by == water::ResinSide::anion, row.text("limiting") == "anion");
  }
}

double published_gallons(const Row& row) {
  const double litres_per_cubic_foot = 28.316847;
  const double mg_per_grain = 64.79891;
  const double capacity = or_nan(water::equivalents_per_litre(row["kgr_per_ft3"]));
  const MilliequivalentsPerLitre grains{row["load_gpg"] * mg_per_grain / litres_per_gallon /
                                        50.0435};
  const water::ResinBed bed{{row["resin_ft3"] * litres_per_cubic_foot}, capacity, capacity, 1};
  return water::resin_run(bed, {grains, grains})->litres.value / litres_per_gallon;
}

INSTANTIATE_TEST_SUITE_P(ResinRunPublished, Handbook,
                         testing::ValuesIn(checks("purifier/04_resin_published.csv", "resin_run",
                                                  {{"US_gallons", Standing::published,
                                                    published_gallons}})),
                         place);

// A fresh bed has all its litres left.
double published_gallons_left(const Row& row) {
  const double milligrams_per_grain = 64.79891;
  const double milligrams = 1000 * row["kgr_per_ft3"] * row["resin_ft3"] * milligrams_per_grain;
  const MilliequivalentsPerLitre load{row["load_gpg"] * milligrams_per_grain / litres_per_gallon /
                                      50.0435};
  return water::litres_left(milligrams / 50.0435 / 1000, 0, load)->value / litres_per_gallon;
}

INSTANTIATE_TEST_SUITE_P(LitresLeftPublished, Handbook,
                         testing::ValuesIn(checks("purifier/04_resin_published.csv", "litres_left",
                                                  {{"US_gallons", Standing::published,
                                                    published_gallons_left}})),
                         place);

const std::string example = "purifier/04_resin_litres_published.csv";

INSTANTIATE_TEST_SUITE_P(LitresLeftOfTheExample, Handbook,
                         testing::ValuesIn(checks(example, "litres_left",
                                                  {{"litres", Standing::published,
                                                    [](const Row& row) {
                                                      return or_nan(water::litres_left(
                                                          row["fresh_eq"], 0, {row["load_meqL"]}));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    ResinRunOfTheExample, Handbook,
    testing::ValuesIn(
        checks(example, "resin_run",
               {{"litres", Standing::published,
                 [](const Row& row) {
                   const double eq = row["fresh_eq"];
                   const MilliequivalentsPerLitre both{row["load_meqL"]};
                   return water::resin_run({{1}, eq, eq, 1}, {both, both})->litres.value;
                 }}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    EquivalentsPerLitre, Handbook,
    testing::ValuesIn(checks("purifier/04_resin_units_published.csv", "equivalents_per_litre",
                             {{"eq_per_L", Standing::published,
                               [](const Row& row) {
                                 return or_nan(water::equivalents_per_litre(row["kgr_per_ft3"]));
                               }}})),
    place);

water::Breakthrough curve(const Row& row) { return {{row["V50_L"]}, {row["s_L"]}}; }

double volume(const Row& row) { return or_nan(water::litres_to(curve(row), row["C_over_C0"])); }
double held(const Row& row) { return or_nan(water::litres_held(curve(row), {row["V_L"]})); }
double leaving(const Row& row) { return or_nan(water::breakthrough_at(curve(row), {row["V_L"]})); }

const std::string curves = "purifier/04_breakthrough.csv";
const std::string logistic = "purifier/04_logistic_scipy.csv";

INSTANTIATE_TEST_SUITE_P(LitresTo, Handbook,
                         testing::ValuesIn(checks(curves, "litres_to", {{"V_L", {}, volume}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    LitresHeld, Handbook,
    testing::ValuesIn(
        checks(curves, "litres_held",
               {{"removed_equiv_L", {}, held},
                {"utilisation", {}, [](const Row& row) { return held(row) / row["V50_L"]; }}})),
    place);

INSTANTIATE_TEST_SUITE_P(LitresToByScipy, Handbook,
                         testing::ValuesIn(checks(logistic, "litres_to",
                                                  {{"V_L", Standing::library, volume}})),
                         place);

INSTANTIATE_TEST_SUITE_P(LitresHeldByScipy, Handbook,
                         testing::ValuesIn(checks(logistic, "litres_held",
                                                  {{"held_L", Standing::library, held}})),
                         place);

INSTANTIATE_TEST_SUITE_P(BreakthroughAtByScipy, Handbook,
                         testing::ValuesIn(checks(logistic, "breakthrough_at",
                                                  {{"C_over_C0", Standing::library, leaving}})),
                         place);

water::Breakthrough fitted(const Row& row) {
  return *water::breakthrough_through({{row["V1"]}, row["f1"]}, {{row["V2"]}, row["f2"]});
}

double target(const Row& row) { return or_nan(water::litres_to(fitted(row), row["target_f"])); }

INSTANTIATE_TEST_SUITE_P(
    BreakthroughThrough, Handbook,
    testing::ValuesIn(checks(
        "purifier/04_twopoint.csv", "breakthrough_through",
        {{"s", {}, [](const Row& row) { return fitted(row).spread.value; }},
         {"V50", {}, [](const Row& row) { return fitted(row).half.value; }},
         {"V_target", {}, target},
         {"litres_left_after_V2", {}, [](const Row& row) { return target(row) - row["V2"]; }}})),
    place);

using water::RotateWhen;

double sharpness(const Row& row) { return row["K=V50/s"]; }

water::Rotation at_limit(const Row& row) {
  return *water::rotation(sharpness(row), RotateWhen::lag_reaches, row["effluent_limit_C/C0"]);
}

water::Rotation at_half(const Row& row) {
  return *water::rotation(sharpness(row), RotateWhen::lead_reaches, 0.5);
}

const std::string simulated = "purifier/04_leadlag.csv";

INSTANTIATE_TEST_SUITE_P(RunOfOne, Handbook,
                         testing::ValuesIn(checks(simulated, "run_of_one",
                                                  {{"single_bed_run(V/V50)",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(water::run_of_one(
                                                          sharpness(row),
                                                          row["effluent_limit_C/C0"]));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(RunOfTwoTogether, Handbook,
                         testing::ValuesIn(checks(simulated, "run_of_two_together",
                                                  {{"both_changed_together_per_canister",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(water::run_of_two_together(
                                                          sharpness(row),
                                                          row["effluent_limit_C/C0"]));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    Rotation, Handbook,
    testing::ValuesIn(checks(
        simulated, "rotation",
        {{"rotate_at_lag_limit_per_canister",
          {},
          [](const Row& row) { return at_limit(row).litres_over_half; }},
         {"spent_lead_utilisation", {}, [](const Row& row) { return at_limit(row).utilisation; }},
         {"lead_effluent_at_swap", {}, [](const Row& row) { return at_limit(row).behind_lead; }},
         {"rotate_when_lead_reaches_0.5_per_canister",
          {},
          [](const Row& row) { return at_half(row).litres_over_half; }},
         {"its_utilisation", {}, [](const Row& row) { return at_half(row).utilisation; }}})),
    place);

const std::string fresh_beds = "purifier/04_fresh_beds_scipy.csv";

INSTANTIATE_TEST_SUITE_P(RunOfOneByScipy, Handbook,
                         testing::ValuesIn(checks(fresh_beds, "run_of_one",
                                                  {{"one", Standing::library,
                                                    [](const Row& row) {
                                                      return or_nan(water::run_of_one(
                                                          row["K"], row["fraction"]));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(RunOfByScipy, Handbook,
                         testing::ValuesIn(checks(fresh_beds, "run_of",
                                                  {{"one", Standing::library,
                                                    [](const Row& row) {
                                                      return or_nan(water::run_of(row["K"], 1,
                                                                                  row["fraction"]));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(RunOfTwoTogetherByScipy, Handbook,
                         testing::ValuesIn(checks(fresh_beds, "run_of_two_together",
                                                  {{"two_per_canister", Standing::library,
                                                    [](const Row& row) {
                                                      return or_nan(water::run_of_two_together(
                                                          row["K"], row["fraction"]));
                                                    }}})),
                         place);

const std::string turns = "purifier/04_leadlag_scipy.csv";

// What the lead has taken up when it is taken out, by the readings of that moment.
double taken_up(const Row& row) {
  return 1 - water::canisters_left(row["K"], row["behind_lead"], row["behind_lag"])->lead;
}

INSTANTIATE_TEST_SUITE_P(CanistersLeftByScipy, Handbook,
                         testing::ValuesIn(checks(turns, "canisters_left",
                                                  {{"utilisation", Standing::library, taken_up}})),
                         place);

// What a lag that was fresh lets through of what comes from the lead.
double behind_fresh_lag(const Row& row) {
  const double left = or_nan(water::fresh_lag_left(row["K"], row["behind_lead"]));
  return row["behind_lead"] * std::exp(-row["K"] * left);
}

INSTANTIATE_TEST_SUITE_P(
    FreshLagLeftByScipy, Handbook,
    testing::ValuesIn(checks(turns, "fresh_lag_left",
                             {{"behind_lag", Standing::library, behind_fresh_lag}},
                             [](const Row& row) { return row.text("when") == "lead"; })),
    place);

std::function<double(const Row&)> integrated(double water::Rotation::*member) {
  return [member](const Row& row) {
    const auto when =
        row.text("when") == "lead" ? RotateWhen::lead_reaches : RotateWhen::lag_reaches;
    return (*water::rotation(row["K"], when, row["fraction"])).*member;
  };
}

INSTANTIATE_TEST_SUITE_P(
    RotationByScipy, Handbook,
    testing::ValuesIn(checks(
        turns, "rotation",
        {{"run_per_canister", Standing::library, integrated(&water::Rotation::litres_over_half)},
         {"utilisation", Standing::library, integrated(&water::Rotation::utilisation)},
         {"behind_lead", Standing::library, integrated(&water::Rotation::behind_lead)},
         {"behind_lag", Standing::library, integrated(&water::Rotation::behind_lag)}})),
    place);

}  // namespace
}  // namespace tidewright::handbook
