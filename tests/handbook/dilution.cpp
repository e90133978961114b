#include "core/water/dilution.hpp"

#include <cmath>
#include <cstdio>
#include <string>

#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

constexpr const char* table = "seawater/15_water_change.csv";

bool batch(const Row& row) { return row.text("mode") == "batch"; }
bool continuous(const Row& row) { return row.text("mode") == "continuous"; }
bool needed(const Row& row) { return row.text("mode") == "changes_needed"; }

water::BatchChanges changes(const Row& row) {
  return {row["C0"], row["C_in"], row["x_or_q"], row["g_or_G"]};
}
water::ContinuousChange change(const Row& row) {
  return {row["C0"], row["C_in"], row["x_or_q"], row["g_or_G"]};
}

// "target 5; continuous needs 2.079442 V0"
double target(const Row& row) {
  return std::stod(row.text("steady_after_or_note").substr(std::string("target ").size()));
}
double number_needed(const Row& row) {
  return or_nan(water::changes_needed(changes(row), target(row)));
}

INSTANTIATE_TEST_SUITE_P(AfterChanges, Handbook,
                         testing::ValuesIn(checks(table, "after_changes",
                                                  {{"C_final", Standing::computed,
                                                    [](const Row& row) {
                                                      return or_nan(water::after_changes(
                                                          changes(row), row["n_or_days"]));
                                                    }}},
                                                  batch)),
                         place);

INSTANTIATE_TEST_SUITE_P(SteadyBeforeChange, Handbook,
                         testing::ValuesIn(checks(table, "steady_before_change",
                                                  {{"steady_before", Standing::computed,
                                                    [](const Row& row) {
                                                      return or_nan(water::steady_before_change(
                                                          changes(row)));
                                                    }}},
                                                  batch)),
                         place);

INSTANTIATE_TEST_SUITE_P(SteadyAfterChange, Handbook,
                         testing::ValuesIn(checks(table, "steady_after_change",
                                                  {{"steady_after_or_note", Standing::computed,
                                                    [](const Row& row) {
                                                      return or_nan(
                                                          water::steady_after_change(changes(row)));
                                                    }}},
                                                  batch)),
                         place);

INSTANTIATE_TEST_SUITE_P(
    ChangesNeeded, Handbook,
    testing::ValuesIn(checks(table, "changes_needed",
                             {{"C_final", Standing::computed, number_needed},
                              {"steady_before", Standing::computed,
                               [](const Row& row) { return std::ceil(number_needed(row)); }}},
                             needed)),
    place);

INSTANTIATE_TEST_SUITE_P(AfterDays, Handbook,
                         testing::ValuesIn(checks(table, "after_days",
                                                  {{"C_final", Standing::computed,
                                                    [](const Row& row) {
                                                      return or_nan(water::after_days(
                                                          change(row), row["n_or_days"]));
                                                    }}},
                                                  continuous)),
                         place);

INSTANTIATE_TEST_SUITE_P(
    Steady, Handbook,
    testing::ValuesIn(checks(table, "steady",
                             {{"steady_before", Standing::computed,
                               [](const Row& row) { return or_nan(water::steady(change(row))); }}},
                             continuous)),
    place);

}  // namespace
}  // namespace tidewright::handbook
