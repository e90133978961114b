#include "core/water/carbon_filter.hpp"

#include <gtest/gtest.h>

namespace tidewright::water {
namespace {

// 10000 L at 2 mg/L, half relied upon: 10 g. 100 L a day at 1 mg/L are 0.1 g a day: 100 days.
constexpr CarbonFilter filter{{10000}, {2}, 0.5};

CarbonUse use(double passed_litres, double days_in_use, double days_allowed) {
  return {{passed_litres}, {100}, {1}, days_in_use, days_allowed, {}};
}

TEST(CarbonLeft, EndsByLitresIfTheyComeFirst) {
  const auto left = carbon_left(filter, use(4000, 40, 365));
  EXPECT_DOUBLE_EQ(left->days, 60);
  EXPECT_EQ(left->by, CarbonEnd::litres);
}

TEST(CarbonLeft, EndsByTheCalendarIfItComesFirst) {
  const auto left = carbon_left(filter, use(1000, 160, 180));
  EXPECT_DOUBLE_EQ(left->days, 20);
  EXPECT_EQ(left->by, CarbonEnd::calendar);
}

TEST(CarbonLeft, EndsAtOnceByATestThatFindsTooMuch) {
  CarbonUse found = use(0, 0, 365);
  found.found_behind = MilligramsPerLitre{0.11};
  EXPECT_DOUBLE_EQ(carbon_left(filter, found)->days, 0);
  EXPECT_EQ(carbon_left(filter, found)->by, CarbonEnd::test);
}

TEST(CarbonLeft, IsNotProlongedByATestThatFindsNothing) {
  CarbonUse clean = use(10000, 10, 365);
  clean.found_behind = MilligramsPerLitre{0};
  EXPECT_DOUBLE_EQ(carbon_left(filter, clean)->days, 0);
  EXPECT_EQ(carbon_left(filter, clean)->by, CarbonEnd::litres);
}

TEST(CarbonLeft, OfChloramineIsThatOfItsOwnRating) {
  // tests/handbook/tables/purifier/07_carbon_life.csv, last row: 1000 gallons at 3 mg/L, half
  // relied upon, 750 L a day: 2.5 days.
  const CarbonFilter small{{1000 * 3.785411784}, {3}, 0.5};
  const CarbonUse daily{{0}, {750}, {3}, 0, 365, {}};
  EXPECT_NEAR(carbon_left(small, daily)->days, 2.524, 0.001);
}

}  // namespace
}  // namespace tidewright::water
