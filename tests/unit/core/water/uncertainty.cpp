#include "core/water/uncertainty.hpp"

#include <gtest/gtest.h>

namespace tidewright::water {
namespace {

TEST(Uncertainty, OfASumIsTheRootOfTheSumOfSquares) {
  const auto sum = [](const std::array<double, 2>& x) { return std::optional(x[0] + x[1]); };
  // 3, 4, 5.
  EXPECT_DOUBLE_EQ(standard_uncertainty(sum, std::array{Estimate{10, 3}, Estimate{1, 4}}).value(),
                   5);
}

// JCGM 100:2008 section 5.1.6: for a product of powers, relative uncertainties combine with the
// powers as weights.
TEST(Uncertainty, OfAProductCombinesRelatively) {
  const auto product = [](const std::array<double, 2>& x) {
    return std::optional(x[0] * x[0] * x[1]);
  };
  const double relative = std::sqrt(4 * 0.001 * 0.001 + 0.003 * 0.003);
  EXPECT_NEAR(
      standard_uncertainty(product, std::array{Estimate{5, 0.005}, Estimate{2, 0.006}}).value(),
      50 * relative, 1e-6 * 50);
}

TEST(Uncertainty, AtAnEndOfTheRangeUsesTheOtherSide) {
  const auto root = [](const std::array<double, 1>& x) -> std::optional<double> {
    if (x[0] < 0) return std::nullopt;
    return 2 * x[0];
  };
  EXPECT_DOUBLE_EQ(standard_uncertainty(root, std::array{Estimate{0, 0.5}}).value(), 1);
}

TEST(Uncertainty, IsUnknownWhereTheFunctionIs) {
  const auto nowhere = [](const std::array<double, 1>&) { return std::optional<double>(); };
  EXPECT_FALSE(standard_uncertainty(nowhere, std::array{Estimate{0, 0.5}}));
}

TEST(Uncertainty, OfALimit) {
  // JCGM 100:2008 section 4.3.7: half-width over the square root of three.
  EXPECT_NEAR(rectangular(1), 0.57735, 5e-6);
}

}  // namespace
}  // namespace tidewright::water
