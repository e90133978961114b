#include "core/water/dosing.hpp"

#include <functional>

#include "core/water/body.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

using Of = std::function<double(const Row&, const water::Batch&)>;

bool of_fresh(const Row& row) { return row.text("mode") == "start_water"; }
bool of_finished(const Row& row) { return !of_fresh(row); }

Column column(const std::string& name, const Of& of) {
  return {name, Standing::library, [of](const Row& row) {
            const auto make = of_fresh(row) ? water::batch_of_fresh : water::batch_of_finished;
            return of(row, make({row["V_L"]}, {row["t_C"]}, {row["S_P"]}, row["w"]).operator*());
          }};
}

double water_kg(const Row& row, const water::Batch& batch) {
  return water::mass({batch.fresh, {0}, {row["t_C"]}})->value;
}
double salt_kg(const Row&, const water::Batch& batch) { return batch.salt.value; }
double total_kg(const Row& row, const water::Batch& batch) {
  return water_kg(row, batch) + batch.salt.value;
}
double other_litres(const Row& row, const water::Batch& batch) {
  return of_fresh(row) ? batch.finished.value : batch.fresh.value;
}
double change_percent(const Row&, const water::Batch& batch) {
  return 100 * (batch.finished / batch.fresh - 1);
}
double grams_per_litre_fresh(const Row&, const water::Batch& batch) {
  return 1000 * batch.salt.value / batch.fresh.value;
}
double grams_per_litre_finished(const Row&, const water::Batch& batch) {
  return 1000 * batch.salt.value / batch.finished.value;
}

std::vector<Column> all_columns() {
  return {column("water_kg", water_kg),
          column("product_kg", salt_kg),
          column("total_kg", total_kg),
          column("other_volume_L", other_litres),
          column("vol_change_pct", change_percent),
          column("g_product_per_L_fresh", grams_per_litre_fresh),
          column("g_product_per_L_final", grams_per_litre_finished)};
}

INSTANTIATE_TEST_SUITE_P(BatchOfFresh, Handbook,
                         testing::ValuesIn(checks("seawater/14_salt_dosing.csv", "batch_of_fresh",
                                                  all_columns(), of_fresh)),
                         place);

INSTANTIATE_TEST_SUITE_P(BatchOfFinished, Handbook,
                         testing::ValuesIn(checks("seawater/14_salt_dosing.csv",
                                                  "batch_of_finished", all_columns(), of_finished)),
                         place);

// The same rows the other way round; a litre's salt is printed to 4 digits of a kilogram only.
bool not_a_litre(const Row& row) { return of_fresh(row) && row["V_L"] > 1; }

INSTANTIATE_TEST_SUITE_P(
    SalinityOfBatch, Handbook,
    testing::ValuesIn(checks("seawater/14_salt_dosing.csv", "salinity_of_batch",
                             {{"S_P", Standing::library,
                               [](const Row& row) {
                                 return or_nan(water::salinity_of_batch(
                                     {row["V_L"]}, {row["t_C"]}, {row["product_kg"]}, row["w"]));
                               }}},
                             not_a_litre)),
    place);

INSTANTIATE_TEST_SUITE_P(SaltYield, Handbook,
                         testing::ValuesIn(checks("seawater/14_salt_dosing.csv", "salt_yield",
                                                  {{"w", Standing::library,
                                                    [](const Row& row) {
                                                      return 1 - or_nan(water::salt_yield(
                                                                     {row["V_L"]}, {row["t_C"]},
                                                                     {row["product_kg"]},
                                                                     {row["S_P"]}));
                                                    }}},
                                                  not_a_litre)),
                         place);

}  // namespace
}  // namespace tidewright::handbook
