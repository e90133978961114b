#include "config/reader/quantity.hpp"

#include <gtest/gtest.h>

namespace tidewright::config {
namespace {

struct Written {
  const char* text;
  Dimension dimension;
  double base;
};

class Quantity : public testing::TestWithParam<Written> {};

TEST_P(Quantity, IsReadInItsBaseUnit) {
  const auto read = read_quantity(GetParam().text);
  const auto* measure = std::get_if<Measure>(&read);
  ASSERT_NE(measure, nullptr) << GetParam().text;
  EXPECT_EQ(measure->unit->dimension, GetParam().dimension);
  EXPECT_NEAR(measure->in_base(), GetParam().base, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(
    Units, Quantity,
    testing::Values(
        Written{"200 L", Dimension::volume, 200}, Written{"200L", Dimension::volume, 200},
        Written{" 0.5  L ", Dimension::volume, 0.5}, Written{"750 mL", Dimension::volume, 0.75},
        // NIST Handbook 44, appendix C: 1 US gallon = 3.785 411 784 L.
        Written{"1 gal", Dimension::volume, 3.785411784}, Written{"40 %", Dimension::share, 0.4},
        Written{"60 s", Dimension::time, 60}, Written{"5 min", Dimension::time, 300},
        Written{"25 h", Dimension::time, 90'000}, Written{"7 days", Dimension::time, 604'800},
        Written{"1 day", Dimension::time, 86'400}, Written{"240 L/day", Dimension::flow, 10},
        Written{"1 L/min", Dimension::flow, 60},
        // 75 US gallons a day: 75 * 3.785411784 / 24.
        Written{"75 gal/day", Dimension::flow, 11.829411825},
        Written{"3 ppm", Dimension::solids, 3}, Written{"3 mg/L", Dimension::solids, 3},
        Written{"-5 °C", Dimension::temperature, -5},
        // The fixed points of water: 32 °F is 0 °C, 212 °F is 100 °C; both scales meet at -40.
        Written{"32 °F", Dimension::temperature, 0}, Written{"212 F", Dimension::temperature, 100},
        Written{"-40 °F", Dimension::temperature, -40}, Written{"1.5 kW", Dimension::power, 1500}));

struct Wrong {
  const char* text;
  Misread::Fault fault;
};

class Misreading : public testing::TestWithParam<Wrong> {};

TEST_P(Misreading, SaysWhatIsWrong) {
  const auto read = read_quantity(GetParam().text);
  const auto* misread = std::get_if<Misread>(&read);
  ASSERT_NE(misread, nullptr) << GetParam().text;
  EXPECT_EQ(misread->fault, GetParam().fault) << GetParam().text;
}

INSTANTIATE_TEST_SUITE_P(
    Faults, Misreading,
    testing::Values(
        Wrong{"200", Misread::Fault::no_unit}, Wrong{"", Misread::Fault::not_a_number},
        Wrong{"L", Misread::Fault::not_a_number}, Wrong{"+5 L", Misread::Fault::not_a_number},
        Wrong{".5 L", Misread::Fault::not_a_number}, Wrong{"1.2.3 L", Misread::Fault::not_a_number},
        Wrong{"1-2 L", Misread::Fault::not_a_number}, Wrong{"nan L", Misread::Fault::not_a_number},
        Wrong{"inf L", Misread::Fault::not_a_number}, Wrong{"1e3 L", Misread::Fault::unknown_unit},
        Wrong{"0x10 L", Misread::Fault::unknown_unit},
        Wrong{"1,5 L", Misread::Fault::decimal_comma}, Wrong{"1,5", Misread::Fault::decimal_comma},
        Wrong{"1,000,000 L", Misread::Fault::not_a_number},
        Wrong{"200 l/d", Misread::Fault::unknown_unit},
        Wrong{"200 L L", Misread::Fault::unknown_unit}));

TEST(QuantityStep, OfADifferenceOfTemperatureHasNoOffset) {
  const auto read = read_quantity("9 °F");
  EXPECT_NEAR(std::get<Measure>(read).step_in_base(), 5, 1e-12);  // 9 °F of difference are 5 °C
}

}  // namespace
}  // namespace tidewright::config
