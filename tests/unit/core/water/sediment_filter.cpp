#include "core/water/sediment_filter.hpp"

#include <gtest/gtest.h>

#include "core/report/outside.hpp"

namespace tidewright::water {
namespace {

TEST(DropAtFlow, FollowsThePowerOfTheFlow) {
  // 2^1.5 and 2^1, by definition.
  EXPECT_NEAR(drop_at_flow({0.1}, {50}, {100})->value, 0.28284271, 1e-8);
  EXPECT_NEAR(drop_at_flow({0.1}, {50}, {100}, 1)->value, 0.2, 1e-12);
  EXPECT_NEAR(drop_at_flow({0.1}, {50}, {50})->value, 0.1, 1e-12);
}

TEST(Clogging, IsJudgedAtTheFlowOfTheCleanFilter) {
  // 0.7 bar above a clean 0.1: used up at 0.8 bar.
  EXPECT_NEAR(*clogging({0.1}, {100}, {0.8}, {100}), 1, 1e-12);
  EXPECT_NEAR(*clogging({0.1}, {100}, {0.45}, {100}), 0.5, 1e-12);
  // The same filter at half the flow drops 0.8 / 2^1.5 bar and is as full.
  EXPECT_NEAR(*clogging({0.1}, {100}, {0.8 / std::pow(2, 1.5)}, {50}), 1, 1e-12);
}

TEST(Clogging, EndsAtOneBarWhateverTheCleanDrop) {
  EXPECT_NEAR(*clogging({0.5}, {100}, {1.0}, {100}), 1, 1e-12);
}

TEST(DropAtFlow, RefusesToCompareWithoutFlow) {
  const auto none = drop_at_flow({0.2}, {0}, {100});
  EXPECT_FALSE(none);
  EXPECT_EQ(report::words(*none.outside()), "flow 0 L/h is outside 0.01 to 100000 L/h");
}

}  // namespace
}  // namespace tidewright::water
