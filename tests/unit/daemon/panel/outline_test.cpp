#include "daemon/panel/outline.hpp"

#include <gtest/gtest.h>

namespace tidewright::panel {
namespace {

const Frame frame;

double depth(config::Outline outline, double share) {
  return (frame.bottom - surface(outline, frame, share)) / (frame.bottom - frame.top);
}

TEST(PanelOutline, DrumAndBoxFillEvenly) {
  for (const auto outline : {config::Outline::drum, config::Outline::box}) {
    EXPECT_NEAR(depth(outline, 0), 0, 1e-9);
    EXPECT_NEAR(depth(outline, 0.25), 0.25, 1e-9);
    EXPECT_NEAR(depth(outline, 1), 1, 1e-9);
    EXPECT_NEAR(depth(outline, 1.3), 1, 1e-9);  // above the brim it has run over
  }
}

// A cone that widens from 0.7 to 1 (solid geometry): to the depth h its volume is the integral of
// (0.7 + 0.3 h)^2, here summed in thin slices.
TEST(PanelOutline, AConeStandsHigherThanItsShareOfLitres) {
  const auto litres_to = [](double h) {
    double sum = 0;
    constexpr int slices = 100'000;
    for (int i = 0; i < slices; ++i) {
      const double width = 0.7 + 0.3 * h * (i + 0.5) / slices;
      sum += width * width * h / slices;
    }
    return sum;
  };
  for (const double share : {0.1, 0.5, 0.9}) {
    EXPECT_NEAR(litres_to(depth(config::Outline::cone, share)) / litres_to(1), share, 1e-4);
  }
  EXPECT_GT(depth(config::Outline::cone, 0.5), 0.5);
}

}  // namespace
}  // namespace tidewright::panel
