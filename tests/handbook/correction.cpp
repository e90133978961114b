#include "core/water/correction.hpp"

#include <functional>
#include <optional>

#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

water::Body batch(const Row& row) { return {{row["V_L"]}, {row["S1"]}, {row["t_C"]}}; }

Column column(const std::string& name, const std::function<double(const water::Correction&)>& of) {
  return {name, Standing::library, [of](const Row& row) {
            const bool full = row.text("mode") == "swap_const_volume";
            const auto vat = full ? std::optional(Litres{row["V_L"]}) : std::nullopt;
            const double water_fraction = row.empty("w") ? 0.05 : row["w"];
            return of(*water::correction(batch(row), {row["S2"]}, water_fraction, vat));
          }};
}

INSTANTIATE_TEST_SUITE_P(
    Correction, Handbook,
    testing::ValuesIn(
        checks("seawater/14b_salinity_correction.csv", "correction",
               {column("product_g", [](const auto& found) { return 1000 * found.salt.value; }),
                column("fresh_L", [](const auto& found) { return found.fresh.value; }),
                column("drain_L", [](const auto& found) { return found.drain.value; }),
                column("V_final_L", [](const auto& found) { return found.finished.value; })})),
    place);

INSTANTIATE_TEST_SUITE_P(
    Mass, Handbook,
    testing::ValuesIn(checks("seawater/14b_salinity_correction.csv", "mass",
                             {{"m1_kg", Standing::library,
                               [](const Row& row) { return or_nan(water::mass(batch(row))); }}})),
    place);

}  // namespace
}  // namespace tidewright::handbook
