#include "core/water/membrane.hpp"

#include <gtest/gtest.h>

namespace tidewright::water {
namespace {

struct Row {
  double celsius;
  double factor;
};

class TemperatureFactor : public testing::TestWithParam<Row> {};

// Source: FilmTec Reverse Osmosis Membranes Technical Manual, DuPont, form 45-D01504-en rev. 20,
// temperature correction factor, seen through a secondary copy; the chart is printed to 3 decimals
// and this reading of it agrees to 0.0005.
TEST_P(TemperatureFactor, AgreesWithThePublishedChart) {
  EXPECT_NEAR(temperature_factor(Celsius{GetParam().celsius}), GetParam().factor, 0.0005);
}

INSTANTIATE_TEST_SUITE_P(Manual, TemperatureFactor,
                         testing::Values(Row{5, 0.4824}, Row{10, 0.5844}, Row{15, 0.7034},
                                         Row{20, 0.8412}, Row{25, 1.0}, Row{30, 1.1574}));

TEST(TemperatureFactorRange, StaysAtItsEnds) {
  EXPECT_EQ(temperature_factor(Celsius{-40}), temperature_factor(Celsius{1}));
  EXPECT_EQ(temperature_factor(Celsius{90}), temperature_factor(Celsius{45}));
}

}  // namespace
}  // namespace tidewright::water
