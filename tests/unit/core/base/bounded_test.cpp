#include "core/base/bounded.hpp"

#include <gtest/gtest.h>

namespace tidewright {
namespace {

TEST(Bounded, RefusesWhatDoesNotFitAndRemembers) {
  Bounded<int, 2> two;
  EXPECT_TRUE(two.push(1));
  EXPECT_TRUE(two.push(2));
  EXPECT_FALSE(two.overflowed());
  EXPECT_FALSE(two.push(3));
  EXPECT_TRUE(two.overflowed());
  EXPECT_EQ(two.size(), 2U);
  EXPECT_EQ(two[1], 2);
}

TEST(Bounded, ClearForgetsTheOverflow) {
  Bounded<int, 1> one;
  one.push(1);
  one.push(2);
  one.clear();
  EXPECT_TRUE(one.empty());
  EXPECT_FALSE(one.overflowed());
}

TEST(ShortText, CutsOffWhatDoesNotFit) {
  EXPECT_EQ(ShortText<4>("vat").view(), "vat");
  EXPECT_EQ(ShortText<4>("canister").view(), "cani");
  EXPECT_TRUE(ShortText<4>().empty());
}

}  // namespace
}  // namespace tidewright
