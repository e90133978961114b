#include "core/ledger/proof_by_meter.hpp"

#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Metered;
using support::Stage;

class ProofByMeter : public testing::Test {
 protected:
  void SetUp() override {
    stage.room.purifier->water_stops_with = room::WaterStopsWith::valve;
    stage.begin();
    stage.wait(3min);
    ASSERT_TRUE(stage.is_on());
  }
  void fill(double by_gauge_l_h, double by_meter_l_h, Duration lasting) {
    stage.says(Metered::product_flow, by_meter_l_h);
    stage.says(Metered::concentrate_flow, 3 * by_meter_l_h);
    stage.says(Metered::feed_flow, 4 * by_meter_l_h);
    double level = 60;
    for (Duration passed{0}; passed < lasting; passed += 10min) {
      stage.wait(10min);
      level += by_gauge_l_h / 6;
      stage.says(support::level, level);
      stage.says(Metered::level_twin, level);
    }
  }
  void stop() {
    stage.says(Metered::product_flow, 0);
    stage.says(Metered::concentrate_flow, 0);
    stage.happen(Ask{.kind = AskKind::stop, .ticket = 1});
    ASSERT_FALSE(stage.is_on());
  }
  const state::Proofs& proofs() const { return stage.state.proofs; }
  Stage stage{support::metered_room()};
};

TEST_F(ProofByMeter, TheGaugeShowsWhatTheMeterCounted) {
  fill(12, 12, 2h);
  stop();
  stage.wait(1min);
  EXPECT_TRUE(proofs().gauge.passed);
  EXPECT_NEAR(proofs().gauge.figure, 1, 0.1);  // 24 L by both; the first reading books nothing
}

TEST_F(ProofByMeter, AGaugeThatShowsHalfHasFailed) {
  fill(6, 12, 2h);
  stop();
  stage.wait(1min);
  EXPECT_TRUE(state::has_failed(proofs().gauge));
  EXPECT_NEAR(proofs().gauge.figure, 0.5, 0.1);
}

TEST_F(ProofByMeter, AShortFillSaysNothing) {
  fill(12, 12, 1h);  // 12 L are six steps of the gauge
  stop();
  stage.wait(1min);
  EXPECT_EQ(proofs().gauge.at, long_ago);
}

// Source: the project's safety decisions, "proof tests": no flow 10 s after a valve closes.
TEST_F(ProofByMeter, AValveThatClosesIsProvedByEachRun) {
  fill(12, 12, 20min);
  stop();
  const Instant before = proofs().valve.at;  // since the start it was known to hold
  stage.now += 5s;
  stage.says(Metered::feed_flow, 20);  // it is closing
  EXPECT_EQ(proofs().valve.at, before);
  stage.now += 5s;
  stage.says(Metered::feed_flow, 0);
  EXPECT_TRUE(proofs().valve.passed);
  EXPECT_EQ(proofs().valve.at, stage.now);
}

TEST_F(ProofByMeter, AValveThatLeaksHasFailedUntilTheNextRun) {
  fill(12, 12, 20min);
  stop();
  stage.now += 10s;
  stage.says(Metered::feed_flow, 20);
  EXPECT_TRUE(state::has_failed(proofs().valve));
  EXPECT_EQ(proofs().valve.figure, 20);
  stage.now += 1min;
  stage.says(Metered::feed_flow, 0);
  EXPECT_TRUE(state::has_failed(proofs().valve));
}

}  // namespace
}  // namespace tidewright
