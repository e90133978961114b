#include "core/water/gravity_scale.hpp"

#include <gtest/gtest.h>

#include <string>

namespace tidewright::water {
namespace {

TEST(GravityScaleText, IsReadAsPeopleWriteIt) {
  EXPECT_EQ(gravity_scale("25/25"), GravityScale::celsius_25_25);
  EXPECT_EQ(gravity_scale(" 25 °C / 25 °C "), GravityScale::celsius_25_25);
  EXPECT_EQ(gravity_scale("77F/77F"), GravityScale::celsius_25_25);
  EXPECT_EQ(gravity_scale("68°F/68°F"), GravityScale::celsius_20_20);
  EXPECT_EQ(gravity_scale("60f/60f"), GravityScale::fahrenheit_60_60);
  EXPECT_EQ(gravity_scale("17.5/17.5"), GravityScale::celsius_17_5_17_5);
  EXPECT_EQ(gravity_scale("15/4"), GravityScale::celsius_15_4);
}

TEST(GravityScaleText, IsNoneForWhatNamesNoScale) {
  for (const char* text : {"", "25", "1.025", "25/20", "60/60", "sg", "25/25/25", "d25/25"}) {
    EXPECT_FALSE(gravity_scale(text)) << text;
  }
}

TEST(GravityScaleText, IsReadBackFromTheListThatAHouseholdIsTold) {
  int scales = 0;
  const std::string list = std::string(gravity_scales) + ", ";
  for (std::size_t at = 0; at < list.size(); at = list.find(", ", at) + 2) {
    const std::string name = list.substr(at, list.find(", ", at) - at);
    const auto scale = gravity_scale(name);
    ASSERT_TRUE(scale) << name;
    EXPECT_EQ(text(*scale), name);
    ++scales;
  }
  EXPECT_EQ(scales, 8);
}

TEST(GravityScaleText, KnowsFahrenheit) {
  // 60 F = (60 - 32) / 1.8 degrees Celsius, by definition.
  EXPECT_NEAR(temperatures(GravityScale::fahrenheit_60_60).sample.value, 15.5556, 5e-5);
}

}  // namespace
}  // namespace tidewright::water
