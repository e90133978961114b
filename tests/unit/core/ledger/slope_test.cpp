// The statistics of the water balance, against textbook formulas (from memory, said where used).
#include "core/ledger/slope.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "core/ledger/leak.hpp"

namespace tidewright::ledger {
namespace {

// Levels from 100 L downwards by `a_slice`, and by `draw` at once where it fell.
std::vector<float> falling(std::size_t count, double a_slice, double draw = 0,
                           std::size_t drawn_at = 0) {
  std::vector<float> levels;
  for (std::size_t i = 0; i < count; ++i) {
    const double drawn = draw > 0 && i >= drawn_at ? draw : 0;
    levels.push_back(static_cast<float>(100 - a_slice * static_cast<double>(i) - drawn));
  }
  return levels;
}

TEST(Slope, OfAStraightFallIsExact) {
  const Fall seen = fall(falling(12, 0.25), 0.5, {.deviation = Litres{0.1}});
  EXPECT_NEAR(seen.rate.value, 0.5, 1e-5);  // 0.25 L in half an hour
}

// The deviation of a least-squares slope over n points a step apart is sigma times the root of
// 12 / (n (n2 - 1)) (textbook, from memory).
TEST(Slope, DeviationIsTheTextbooks) {
  const Fall seen = fall(falling(10, 0), 1, {.deviation = Litres{0.3}});
  EXPECT_NEAR(seen.error.value, 0.3 * std::sqrt(12.0 / (10 * 99)), 1e-9);
}

TEST(Slope, ADrawAnywhereIsNoFall) {
  const LevelError error{.deviation = Litres{0.1}};
  for (std::size_t at = 1; at < 24; ++at) {
    EXPECT_LE(fall(falling(24, 0, 6, at), 1.0 / 6, error).between.value, 1e-4) << at;
  }
  for (std::size_t at = 3; at < 21; ++at) {
    EXPECT_NEAR(fall(falling(24, 0, 6, at), 1.0 / 6, error).rate.value, 0, 1e-4) << at;
    EXPECT_NEAR(fall(falling(24, 0.5, 6, at), 1.0 / 6, error).rate.value, 3, 1e-4)
        << "a leak is seen through a draw at " << at;
  }
}

TEST(Slope, ThreeDrawsInFourHoursAreNoFall) {
  std::vector<float> levels = falling(24, 0);
  for (const std::size_t at : {5U, 11U, 18U}) {
    for (std::size_t i = at; i < levels.size(); ++i) levels[i] -= 2;
  }
  const Fall seen = fall(levels, 1.0 / 6, {.deviation = Litres{0.16}});
  EXPECT_NEAR(seen.rate.value, 0, 1e-4);
}

TEST(Slope, WhatIsPouredInHidesNoLeak) {
  const Fall seen = fall(falling(24, 0.5, -8, 12), 1.0 / 6, {.deviation = Litres{0.1}});
  EXPECT_NEAR(seen.rate.value, 3, 1e-4);
}

// A draw too small to be proved is still no proof of a leak.
TEST(Slope, ASmallDrawLeavesNoFallBetween) {
  for (std::size_t at = 1; at < 12; ++at) {
    const Fall seen = fall(falling(12, 0, 0.4, at), 1.0 / 6, {.deviation = Litres{0.16}});
    EXPECT_LE(seen.between.value, 0) << at;
  }
}

// Widrow's result for a dithered quantiser (from memory): the mean error is a sawtooth whose first
// harmonic is step / pi times exp(-2 pi2 (sigma / step)2); it is half a step without any dither.
TEST(Rounding, IsHalfAStepWithoutScatterAndNothingWithMuch) {
  EXPECT_DOUBLE_EQ(rounding(Litres{2}, Litres{0}).value, 1);
  EXPECT_LT(rounding(Litres{2}, Litres{2}).value, 0.02);
  EXPECT_EQ(rounding(Litres{0}, Litres{1}).value, 0);
  for (const double share : {0.1, 0.2, 0.3, 0.5}) {
    const double first = 2 / 3.14159 * std::exp(-2 * 9.8696 * share * share);
    EXPECT_GE(rounding(Litres{2}, Litres{2 * share}).value, first) << "never less than it is";
  }
}

// The threshold is what its derivation says: six windows at each of six slices an hour, each
// erring by the normal's tail.
TEST(Leak, ThresholdIsDerivedFromFalseAlarmsAYear) {
  const double tests_a_year = 6 * 8766 * 6;
  const double tail = std::erfc(leak_deviations / std::sqrt(2.0)) / 2;
  EXPECT_LE(tests_a_year * tail, false_leaks_a_year);
  EXPECT_GT(tests_a_year * tail, false_leaks_a_year / 2) << "and no stricter than that";
}

}  // namespace
}  // namespace tidewright::ledger
