#include "core/water/evaporation.hpp"

#include <functional>

#include "core/water/reference_salt.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

constexpr const char* table = "seawater/17_evaporation.csv";

bool left_alone(const Row& row) { return row.text("replenish") == "none"; }
bool topped_up(const Row& row) { return !left_alone(row); }

water::Body before(const Row& row) { return {{row["V_L"]}, {row["S_P"]}, {row["t_C"]}}; }

water::Body after(const Row& row) {
  return left_alone(row) ? *water::after_evaporation(before(row), {row["Ve_L"]})
                         : *water::after_top_up(before(row), {row["Ve_L"]}, {row["S_in"]});
}

Column column(const std::string& name,
              const std::function<double(const Row&, const water::Body&)>& of) {
  return {name, Standing::library, [of](const Row& row) { return of(row, after(row)); }};
}

std::vector<Column> all_columns() {
  return {
      column("S2", [](const Row&, const auto& body) { return body.salinity.value; }),
      column("SA2", [](const Row&,
                       const auto& body) { return water::absolute_salinity(body.salinity).value; }),
      column("dS",
             [](const Row& row, const auto& body) { return body.salinity.value - row["S_P"]; }),
      column("V2_L", [](const Row&, const auto& body) { return body.volume.value; })};
}

INSTANTIATE_TEST_SUITE_P(AfterEvaporation, Handbook,
                         testing::ValuesIn(checks(table, "after_evaporation", all_columns(),
                                                  left_alone)),
                         place);

INSTANTIATE_TEST_SUITE_P(AfterTopUp, Handbook,
                         testing::ValuesIn(checks(table, "after_top_up", all_columns(), topped_up)),
                         place);

INSTANTIATE_TEST_SUITE_P(EvaporatedUntil, Handbook,
                         testing::ValuesIn(checks(table, "evaporated_until",
                                                  {{"Ve_L", Standing::library,
                                                    [](const Row& row) {
                                                      return or_nan(water::evaporated_until(
                                                          before(row), {row["S2"]}));
                                                    }}},
                                                  left_alone)),
                         place);

}  // namespace
}  // namespace tidewright::handbook
