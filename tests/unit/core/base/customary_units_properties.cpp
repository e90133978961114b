#include <cmath>

#include "core/base/customary_units.hpp"
#include "tests/support/between.hpp"

namespace tidewright {
namespace {

using support::between;

// NIST Handbook 44, appendix C; 68 F and 20 C, 212 F and 100 C by the scales' definition.
TEST(CustomaryUnits, AreThoseOfTheStandard) {
  EXPECT_EQ(litres(Gallons{1}).value, 3.785411784);
  EXPECT_EQ(kilograms(Pounds{1}).value, 0.45359237);
  EXPECT_DOUBLE_EQ(celsius(Fahrenheit{68}).value, 20);
  EXPECT_DOUBLE_EQ(celsius(Fahrenheit{212}).value, 100);
  EXPECT_EQ(celsius(Fahrenheit{32}).value, 0);
}

RC_GTEST_PROP(CustomaryUnits, ThereAndBackIsTheSame, ()) {
  const double number = *between(-1e6, 1e6);
  const double allowed = 1e-12 * (1 + std::abs(number));
  RC_ASSERT(std::abs(gallons(litres(Gallons{number})).value - number) <= allowed);
  RC_ASSERT(std::abs(pounds(kilograms(Pounds{number})).value - number) <= allowed);
  RC_ASSERT(std::abs(fahrenheit(celsius(Fahrenheit{number})).value - number) <= 32 * allowed);
}

}  // namespace
}  // namespace tidewright
