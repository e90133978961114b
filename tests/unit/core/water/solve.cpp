#include "core/water/solve.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace tidewright::water {
namespace {

TEST(Solve, FindsTheRootOfASmoothFunction) {
  // 2^(1/3), by the definition of a cube root.
  const auto cube = [](double x) { return x * x * x; };
  EXPECT_NEAR(solve(cube, 2, {0, 2}, 1e-12).value(), std::cbrt(2.0), 1e-12);
}

TEST(Solve, FindsTheRootOfAFallingFunction) {
  const auto falling = [](double x) { return std::exp(-x); };
  EXPECT_NEAR(solve(falling, 0.5, {0, 10}, 1e-12).value(), std::log(2.0), 1e-12);
}

TEST(Solve, AnswersItsEnds) {
  const auto same = [](double x) { return x; };
  EXPECT_EQ(solve(same, 1, {1, 4}, 1e-9), 1);
  EXPECT_EQ(solve(same, 4, {1, 4}, 1e-9), 4);
}

TEST(Solve, AnswersNothingBeyondItsEnds) {
  const auto same = [](double x) { return x; };
  EXPECT_FALSE(solve(same, 4.1, {1, 4}, 1e-9));
  EXPECT_FALSE(solve(same, NAN, {1, 4}, 1e-9));
}

TEST(Solve, IsBoundedOnTheShapesThatChordsAreSlowOn) {
  for (int power : {1, 3, 9, 25, 81}) {
    int calls = 0;
    const auto steep = [&](double x) {
      ++calls;
      return std::pow(x, power);
    };
    EXPECT_NEAR(solve(steep, 1e-3, {0, 3}, 1e-9).value(), std::pow(1e-3, 1.0 / power), 1e-9);
    EXPECT_LE(calls, 2 + 3 * std::ceil(std::log2(3 / 1e-9)));
  }
}

}  // namespace
}  // namespace tidewright::water
