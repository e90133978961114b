#include "core/water/membrane.hpp"

#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

double divisor(const Row& row) { return 1 / water::temperature_factor(Celsius{row["T_C"]}); }

// The chart's last two rows are a product sheet's rounded "59 F" and "50 F".
INSTANTIATE_TEST_SUITE_P(
    TemperatureFactorPublished, Handbook,
    testing::ValuesIn(checks("purifier/02_tcf_published.csv", "temperature_factor",
                             {{"published_divisor", std::nullopt, divisor}},
                             [](const Row& row) { return row.number() <= 40; })),
    place);

INSTANTIATE_TEST_SUITE_P(TemperatureFactorComputed, Handbook,
                         testing::ValuesIn(checks("purifier/02_tcf.csv", "temperature_factor",
                                                  {{"divide_by_form(1/TCF)", std::nullopt,
                                                    divisor}})),
                         place);

}  // namespace
}  // namespace tidewright::handbook
