#include "core/water/membrane_temperature.hpp"

#include <gtest/gtest.h>

#include "core/report/outside.hpp"

namespace tidewright::water {
namespace {

TEST(TemperatureFactor, StaysAtItsEndsAndSaysSo) {
  const auto cold = temperature_factor(Celsius{-40});
  EXPECT_EQ(*cold, *temperature_factor(Celsius{1}));
  EXPECT_FALSE(cold.in_range());
  EXPECT_EQ(report::words(*cold.outside()), "temperature -40 °C is outside 1 to 45 °C");
  EXPECT_EQ(*temperature_factor(Celsius{90}), *temperature_factor(Celsius{45}));
  EXPECT_TRUE(temperature_factor(Celsius{45}).in_range());
}

TEST(TemperatureFactor, RefusesWhatIsNoNumber) {
  EXPECT_FALSE(temperature_factor(Celsius{NAN}));
  EXPECT_FALSE(temperature_factor(Celsius{INFINITY}));
  EXPECT_FALSE(temperature_factor(Celsius{20}, {-1, 3020, 273}));
}

}  // namespace
}  // namespace tidewright::water
