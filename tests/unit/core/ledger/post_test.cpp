#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Minimal;
using support::Stage;

class Ledger : public testing::Test {
 protected:
  void SetUp() override {
    stage.begin();
    stage.wait(2min);
    ASSERT_TRUE(stage.is_on());
  }
  const state::Ledger& ledger() const { return stage.state.ledger; }
  Stage stage;
};

TEST_F(Ledger, RunningTimeIsBookedWhileThePlugSaysOn) {
  stage.wait(45min);
  EXPECT_EQ(ledger().working[0].run, 45min);
  stage.says(Minimal::feedback, 0);
  stage.plug_obeys = false;
  stage.wait(1min);
  EXPECT_EQ(ledger().working[0].total, 45min);
}

TEST_F(Ledger, FlowIsTheRatedOneAtThisTemperature) {
  stage.says(Minimal::warmth, 25);
  const double before = ledger().flowed.value;
  stage.wait(1h);
  // 280 L/day at its rating temperature is 11.667 L/h by division.
  EXPECT_NEAR(ledger().flowed.value - before, 280.0 / 24, 1e-9);
}

TEST_F(Ledger, RisesAreMadeWaterAndFlickerIsNot) {
  stage.says(Minimal::level, 62);
  stage.says(Minimal::level, 60);
  stage.says(Minimal::level, 62);
  stage.says(Minimal::level, 64);
  EXPECT_DOUBLE_EQ(ledger().made.value, 4);
  EXPECT_DOUBLE_EQ(ledger().fill.gained.value, 4);
  EXPECT_DOUBLE_EQ(ledger().fill.drawn.value, 0);
}

TEST_F(Ledger, ADrawIsNotLostFromTheFill) {
  stage.says(Minimal::level, 70);
  stage.says(Minimal::level, 50);
  stage.says(Minimal::level, 54);
  EXPECT_DOUBLE_EQ(ledger().fill.drawn.value, 20);
  EXPECT_DOUBLE_EQ(ledger().made.value, 14);
}

TEST_F(Ledger, LitresToGoAreKnownBeforeTheFill) {
  EXPECT_TRUE(ledger().fill.under_way);
  EXPECT_DOUBLE_EQ(ledger().fill.to_go.value, 120);
}

// From 60 L to STOP at 180 L, a gauge step of 2 L in each 15 minutes.
void fill_to_stop(Stage& stage) {
  for (int level = 62; level <= 180; level += 2) {
    stage.wait(15min);
    stage.says(Minimal::level, level);
  }
}

TEST_F(Ledger, AFillThatReachesStopTeachesWhatThisPurifierGives) {
  stage.says(Minimal::warmth, 25);
  fill_to_stop(stage);
  stage.wait(1min);
  EXPECT_EQ(ledger().learned.fills, 1);
  // 8 L/h came; 280 L/day at its rating temperature is 11.667 L/h. By division 0.686.
  EXPECT_NEAR(ledger().learned.share, 8 / (280.0 / 24), 0.02);
}

TEST_F(Ledger, AFillThatSomebodyStopsTeachesNothing) {
  for (int level = 62; level <= 120; level += 2) {
    stage.wait(15min);
    stage.says(Minimal::level, level);
  }
  stage.happen(Ask{.kind = AskKind::stop, .ticket = 1});
  stage.wait(1min);
  EXPECT_FALSE(ledger().fill.under_way);
  EXPECT_EQ(ledger().learned.fills, 0);
}

TEST_F(Ledger, RateIsTakenBetweenGaugeSteps) {
  for (int level = 62; level <= 80; level += 2) {
    stage.wait(12min);
    stage.says(Minimal::level, level);
  }
  // 2 L in 12 min.
  EXPECT_NEAR(ledger().level.rate.value, 10, 0.5);
}

TEST_F(Ledger, TotalsGoOnAcrossARestart) {
  stage.says(Minimal::level, 70);
  stage.wait(10min);
  const auto total = ledger().working[0].total;
  stage.now += 8h;
  stage.happen(Started{.clean = true, .away = 8h});
  EXPECT_EQ(ledger().working[0].total, total);
  EXPECT_DOUBLE_EQ(ledger().made.value, 10);
}

TEST_F(Ledger, ProductCountsOnlyInSettledRunning) {
  EXPECT_EQ(ledger().product.count, 0);
  stage.says(Minimal::product, 40);
  EXPECT_EQ(ledger().product.count, 0);
  stage.wait(3min);
  stage.says(Minimal::product, 2);
  EXPECT_EQ(ledger().product.count, 1);
}

TEST_F(Ledger, AFastMeterIsThinned) {
  stage.room.instruments[Minimal::product].reports_every = 5s;
  stage.wait(3min);
  stage.says(Minimal::product, 2);
  stage.wait(2h);
  const auto& samples = ledger().product;
  ASSERT_EQ(samples.count, samples.items.size());
  EXPECT_GE(samples.items.front().litres - samples.items.back().litres, 2.0F);
}

TEST_F(Ledger, ARotationEndsWhatWasKnownOfTheWater) {
  stage.wait(3min);
  stage.says(Minimal::product, 2);
  stage.happen(Tell{.kind = TellKind::rotated});
  EXPECT_EQ(ledger().product.count, 0);
}

}  // namespace
}  // namespace tidewright
