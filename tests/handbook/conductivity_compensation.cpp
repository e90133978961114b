#include "core/water/conductivity_compensation.hpp"

#include <functional>
#include <utility>

#include "core/water/practical_salinity.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

using water::Compensation;

const Compensation two_percent{Compensation::Law::linear, 2.0};
const Compensation standard_methods = water::standard_methods_2510;
const Compensation iso = water::iso_7888;

using Of = std::function<double(const Row&)>;

Of factor(Compensation law) {
  return [law](const Row& row) { return or_nan(water::factor_to_25(law, Celsius{row["t_C"]})); };
}

Of seawater_factor(double salinity) {
  return [salinity](const Row& row) {
    return or_nan(water::seawater_factor_to_25(PracticalSalinity{salinity}, Celsius{row["t_C"]}));
  };
}

INSTANTIATE_TEST_SUITE_P(
    FactorTo25, Handbook,
    testing::ValuesIn(checks("seawater/12_conductivity_temperature.csv", "factor_to_25",
                             {{"iso7888", Standing::published, factor(iso)},
                              {"lin_2.00", Standing::computed, factor(two_percent)},
                              {"lin_1.91", Standing::computed, factor(standard_methods)}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    SeawaterFactorTo25, Handbook,
    testing::ValuesIn(checks("seawater/12_conductivity_temperature.csv", "seawater_factor_to_25",
                             {{"seawater_S35", Standing::library, seawater_factor(35)},
                              {"seawater_S5", Standing::library, seawater_factor(5)}})),
    place);

// What a meter of this law shows in the row's water.
Of shown(Compensation law) {
  return [law](const Row& row) { return row["C_raw_mS_cm"] * factor(law)(row); };
}

// The salinity that is taken from it by who believes the law.
Of believed(Compensation law) {
  return [law](const Row& row) {
    return or_nan(water::practical_salinity(MillisiemensPerCm{shown(law)(row)}, Celsius{25}));
  };
}

Of error(Compensation law) {
  return [law](const Row& row) { return believed(law)(row) - 35; };
}

INSTANTIATE_TEST_SUITE_P(
    ShownByAMeter, Handbook,
    testing::ValuesIn(checks("seawater/12b_seawater_wrong_compensation.csv", "factor_to_25",
                             {{"k25_2.00", Standing::computed, shown(two_percent)},
                              {"k25_1.91", Standing::computed, shown(standard_methods)},
                              {"k25_iso", Standing::computed, shown(iso)}})),
    place);

INSTANTIATE_TEST_SUITE_P(
    TheMetersLawBelieved, Handbook,
    testing::ValuesIn(checks("seawater/12b_seawater_wrong_compensation.csv", "practical_salinity",
                             {{"S_2.00", Standing::library, believed(two_percent)},
                              {"S_1.91", Standing::library, believed(standard_methods)},
                              {"S_iso", Standing::library, believed(iso)},
                              {"err_2.00", Standing::library, error(two_percent)},
                              {"err_1.91", Standing::library, error(standard_methods)},
                              {"err_iso", Standing::library, error(iso)}})),
    place);

// Every row of the table is water of salinity 35.
TEST(SalinityOfCompensated, UndoesTheMetersLaw) {
  const Table table = read_table("seawater/12b_seawater_wrong_compensation.csv");
  for (const Table::Line& line : table.lines) {
    const Row row(table, line);
    for (const auto& [column, law] :
         {std::pair{"k25_2.00", two_percent}, {"k25_1.91", standard_methods}, {"k25_iso", iso}}) {
      EXPECT_NEAR(or_nan(water::salinity_of_compensated(MillisiemensPerCm{row[column]},
                                                        Celsius{row["t_C"]}, law)),
                  35, 2e-4)
          << column << row.number();
    }
  }
}

}  // namespace
}  // namespace tidewright::handbook
