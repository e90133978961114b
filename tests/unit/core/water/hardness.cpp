#include "core/water/hardness.hpp"

#include <gtest/gtest.h>

#include "core/water/carbonate.hpp"

namespace tidewright::water {
namespace {

constexpr ScaleWater feed{{12}, {400}, {200}, {180}, 7.4};

TEST(Concentrated, IsTwiceAsStrongAndHigherByTheLogarithmOfTwo) {
  const ScaleWater twice = *concentrated(feed, 2);
  EXPECT_DOUBLE_EQ(twice.dissolved_solids.value, 800);
  EXPECT_DOUBLE_EQ(twice.calcium.value, 400);
  EXPECT_DOUBLE_EQ(twice.alkalinity.value, 360);
  EXPECT_NEAR(twice.ph, 7.4 + 0.30103, 1e-5);
}

// The membrane does not hold the gas: as much of it on both sides.
TEST(Concentrated, HasTheCarbonDioxideOfTheFeed) {
  const ScaleWater more = *concentrated(feed, 3);
  EXPECT_NEAR(carbon_dioxide(more.alkalinity, more.ph, more.temperature)->value,
              carbon_dioxide(feed.alkalinity, feed.ph, feed.temperature)->value, 1e-9);
}

TEST(Concentrated, OfNothingIsRefused) {
  EXPECT_FALSE(concentrated(feed, 0.5));
  EXPECT_FALSE(concentrated({{12}, {400}, {200}, {180}, 14}, 2));
}

}  // namespace
}  // namespace tidewright::water
