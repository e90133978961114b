// What running tells: a stop, a slow purifier, and what is neither.
#include "core/ledger/shortfall.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/rooms.hpp"

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

// A purifier that gives 8 L/h as it has in three fills; nothing says how warm the water is.
struct ShortfallTest : testing::Test {
  ShortfallTest() {
    learned.fills = 3;
    // 280 L a day at 25 degrees; 0.584 of it at 10 degrees (the form of 3 % a degree and more that
    // tests/handbook/tables/purifier/02_tcf.csv holds).
    learned.share = 8 / (280.0 / 24 * 0.584);
  }

  void run(double l_h, Duration lasting) {
    for (Duration lived{0}; lived < lasting; lived += 3min) {
      level += l_h / 20;
      state::Stretch& stretch = balance.stretch;
      if (stretch.count == stretch.levels.size()) {
        std::shift_left(stretch.levels.begin(), stretch.levels.end(), 1);
        --stretch.count;
      }
      stretch.levels[stretch.count++] = static_cast<float>(level - l_h / 40);  // the mean
      stretch.held = Litres{level};
      post_shortfall(from, {.deviation = Litres{0.3}}, 3min, learned, balance);
    }
  }

  room::Room room = support::minimal_room();  // STOP at 180 L
  state::Circumstances circumstances;
  state::Signals signals{};
  state::Drives drives{};
  state::MakeWater make_water;
  Sources from{room, circumstances, signals, drives, make_water};
  state::LearnedFlow learned;
  state::Balance balance;
  double level = 80;
};

TEST_F(ShortfallTest, AStopIsFoundWithinHalfAnHourWithItsLitres) {
  run(8, 90min);
  EXPECT_FALSE(balance.stall.found);
  run(0, 30min);
  ASSERT_TRUE(balance.stall.found);
  EXPECT_NEAR(balance.stall.usual.value, 8, 0.5);
  EXPECT_NEAR(balance.stall.rate.value, 0, 0.5);
  EXPECT_NEAR(balance.stall.missing.value, 8 * hours(balance.stall.lasting), 0.5);
}

TEST_F(ShortfallTest, AStopIsOverWhenItRisesAgain) {
  run(8, 90min);
  run(0, 60min);
  EXPECT_TRUE(balance.stall.found);
  run(8, 30min);
  EXPECT_FALSE(balance.stall.found);
}

TEST_F(ShortfallTest, TwoDrawsAreNoStop) {
  run(8, 90min);
  for (int draw = 0; draw < 2; ++draw) {
    level -= 2;
    run(8, 12min);
    EXPECT_FALSE(balance.stall.found);
  }
  run(8, 60min);
  EXPECT_FALSE(balance.stall.found);
}

// In a calm household two draws on end are less likely than a float that sticks.
TEST_F(ShortfallTest, AStopIsFoundSoonerWhereNobodyDraws) {
  const auto found_after = [&](double draws_an_hour) {
    balance = {};
    balance.habit.learned = 3;
    balance.draws.began = circumstances.now;
    balance.draws.an_hour = draws_an_hour;
    level = 80;
    run(8, 90min);
    Duration lasting{0};
    for (; !balance.stall.found && lasting < 2h; lasting += 3min) run(0, 3min);
    return lasting;
  };
  const Duration calm = found_after(0);
  EXPECT_LE(calm, 20min);
  EXPECT_GT(found_after(0.5), calm);
}

TEST_F(ShortfallTest, NearStopTheFloatClosesByItsNature) {
  level = 164;
  run(8, 60min);
  run(0, 2h);  // at 172 L
  EXPECT_FALSE(balance.stall.found);
  EXPECT_FALSE(balance.slow.found);
}

TEST_F(ShortfallTest, HalfOfTheUsualIsSlowOnceThreeFillsAreKnown) {
  run(4, 150min);
  EXPECT_TRUE(balance.slow.found);
  EXPECT_NEAR(balance.slow.rate.value, 4, 0.1);
  EXPECT_NEAR(balance.slow.missing.value, 8, 0.5);  // 4 L/h over two hours
  run(8, 150min);
  EXPECT_FALSE(balance.slow.found);
}

TEST_F(ShortfallTest, BeforeThreeFillsNothingIsSlow) {
  learned.fills = 2;
  run(3, 4h);
  EXPECT_FALSE(balance.slow.found);
}

}  // namespace
}  // namespace tidewright::ledger
