// Starts, carbon, filling: what runs by litres and hours.
#include "core/base/customary_units.hpp"
#include "core/water/carbon_filter.hpp"
#include "core/water/filling.hpp"
#include "core/water/sediment_filter.hpp"
#include "core/water/startup.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

constexpr double psi_per_bar = 14.5038;

const std::string starts = "purifier/06_startup.csv";

water::StartUp start(const Row& row) {
  return {{row["C_start_mgL"]}, {row["C_steady_mgL"]}, {row["Q_Lh"]}, {row["holdup_L"]}};
}

double minutes_within(const Row& row, double margin_mg_l) {
  return or_nan(water::minutes_until_within(start(row), {margin_mg_l}));
}

double within_one(const Row& row) { return minutes_within(row, 1); }
double within_tenth(const Row& row) { return minutes_within(row, row["C_steady_mgL"] / 10); }
double flushed(const Row& row) { return within_one(row) / 60 * row["Q_Lh"]; }

INSTANTIATE_TEST_SUITE_P(TimeConstant, Handbook,
                         testing::ValuesIn(checks(starts, "time_constant_minutes",
                                                  {{"tau_min",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(
                                                          water::time_constant_minutes(start(row)));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(MinutesUntilWithin, Handbook,
                         testing::ValuesIn(checks(starts, "minutes_until_within",
                                                  {{"min_to_within_1mgL", {}, within_one},
                                                   {"min_to_within_10pct", {}, within_tenth},
                                                   {"litres_flushed", {}, flushed}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    StartUpCost, Handbook,
    testing::ValuesIn(checks(
        starts, "start_up_cost",
        {{"excess_salt_mg_per_start",
          {},
          [](const Row& row) { return water::start_up_cost(start(row))->excess_mg; }},
         {"equals_steady_litres",
          {},
          [](const Row& row) { return water::start_up_cost(start(row))->equal_litres.value; }},
         {"equals_steady_minutes",
          {},
          [](const Row& row) { return water::start_up_cost(start(row))->equal_minutes; }}})),
    place);

water::CycleLoad cycles(const Row& row) {
  return *water::cycle_load(row["starts_per_day"], {row["L_per_day"]}, {row["steady_mgL"]},
                            row["excess_mg_per_start"]);
}

INSTANTIATE_TEST_SUITE_P(
    CycleLoad, Handbook,
    testing::ValuesIn(checks(
        "purifier/06_cycles.csv", "cycle_load",
        {{"mean_mgL_to_resin", {}, [](const Row& row) { return cycles(row).mean.value; }},
         {"extra_resin_load_pct", {}, [](const Row& row) { return 100 * cycles(row).extra; }}})),
    place);

const std::string carbon = "purifier/07_carbon_life.csv";

water::CarbonFilter filter(const Row& row) {
  return {{row["rated_gal"] * litres_per_gallon}, {row["challenge_mgL"]}, row["derate"]};
}

double daily_feed(const Row& row) {
  return or_nan(water::feed_of_product({row["product_Ld"]}, row["recovery"]));
}

water::CarbonLife life(const Row& row) {
  return *water::carbon_life(filter(row), {daily_feed(row)}, {row["chlorine_mgL"]});
}

INSTANTIATE_TEST_SUITE_P(FeedOfProduct, Handbook,
                         testing::ValuesIn(checks(carbon, "feed_of_product",
                                                  {{"feed_Ld", {}, daily_feed}})),
                         place);

INSTANTIATE_TEST_SUITE_P(CarbonCapacity, Handbook,
                         testing::ValuesIn(checks(carbon, "carbon_capacity_grams",
                                                  {{"capacity_g",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(water::carbon_capacity_grams(
                                                          filter(row)));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    CarbonLife, Handbook,
    testing::ValuesIn(
        checks(carbon, "carbon_life",
               {{"days", {}, [](const Row& row) { return life(row).days; }},
                {"litres_of_feed", {}, [](const Row& row) { return life(row).feed_litres.value; }},
                {"load_g_d",
                 {},
                 [](const Row& row) {
                   return or_nan(water::carbon_capacity_grams(filter(row))) / life(row).days;
                 }}})),
    place);

// Of a fresh filter with time enough by the calendar, the same days.
INSTANTIATE_TEST_SUITE_P(
    CarbonLeft, Handbook,
    testing::ValuesIn(checks(carbon, "carbon_left",
                             {{"days",
                               {},
                               [](const Row& row) {
                                 const water::CarbonUse use{
                                     {0}, {daily_feed(row)}, {row["chlorine_mgL"]}, 0, 3650, {}};
                                 return water::carbon_left(filter(row), use)->days;
                               }}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    DropAtFlow, Handbook,
    testing::ValuesIn(checks("purifier/07_sediment_published.csv", "drop_at_flow",
                             {{"psi_then", Standing::published,
                               [](const Row& row) {
                                 return or_nan(water::drop_at_flow(
                                            {row["psi"] / psi_per_bar},
                                            {row["gpm"] * 60 * litres_per_gallon},
                                            {row["gpm_then"] * 60 * litres_per_gallon},
                                            row["power"])) *
                                        psi_per_bar;
                               }}})),
    place);

const std::string filling = "purifier/09_fill_overflow.csv";

LitresPerHour flow(const Row& row) { return {row["Q_Lh"]}; }

INSTANTIATE_TEST_SUITE_P(HoursToFill, Handbook,
                         testing::ValuesIn(checks(filling, "hours_to_fill",
                                                  {{"hours_to_full",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(water::hours_to_fill(
                                                          {row["V_now_L"]}, {row["V_full_L"]},
                                                          flow(row)));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    Flood, Handbook,
    testing::ValuesIn(checks(
        filling, "flood",
        {{"L_per_min",
          {},
          [](const Row& row) { return water::flood(flow(row), 1.0 / 60, 1)->water.value; }},
         {"overflow_in_8h_L",
          {},
          [](const Row& row) { return water::flood(flow(row), 8, 12)->water.value; }},
         {"depth_mm_on_12m2",
          {},
          [](const Row& row) { return 1000 * water::flood(flow(row), 8, 12)->depth.value; }}})),
    place);

double concentrate(const Row& row) {
  return or_nan(water::concentrate_flow({row["product_Ld"] / 24}, row["recovery"]));
}

INSTANTIATE_TEST_SUITE_P(
    ConcentrateFlow, Handbook,
    testing::ValuesIn(
        checks("purifier/09_product_vs_concentrate.csv", "concentrate_flow",
               {{"concentrate_Lh", {}, concentrate},
                {"concentrate_Ld", {}, [](const Row& row) { return 24 * concentrate(row); }},
                {"hours_to_fill_200L_concentrate_container",
                 {},
                 [](const Row& row) {
                   return or_nan(water::hours_to_fill({0}, {200}, {concentrate(row)}));
                 }}})),
    place);

INSTANTIATE_TEST_SUITE_P(ConcentrateFlowPublished, Handbook,
                         testing::ValuesIn(checks("purifier/01_membrane_published.csv",
                                                  "concentrate_flow",
                                                  {{"concentrate_flow", Standing::published,
                                                    [](const Row& row) {
                                                      return or_nan(water::concentrate_flow(
                                                          {row["permeate_flow"]}, row["recovery"]));
                                                    }}})),
                         place);

}  // namespace
}  // namespace tidewright::handbook
