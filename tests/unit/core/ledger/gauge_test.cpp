// A gauge that scatters must not make water: neither a rise nor a draw comes of noise alone.
#include <gtest/gtest.h>

#include <cmath>

#include "core/rehearsal/chance.hpp"
#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Minimal;
using support::Stage;

// A gauge once a minute, seen by the whole step, whose truth we know.
class NoisyGauge : public testing::TestWithParam<std::uint64_t> {
 protected:
  void begin(double step_litres, double noise_litres) {
    stage.room.instruments[Minimal::level].step = step_litres;
    noise_ = noise_litres;
    stage.begin();
    stage.wait(2min);
    ASSERT_TRUE(stage.is_on());
  }
  // Lets the level move so fast for so long.
  void play(double litres_an_hour, Duration lasting) {
    for (const Instant end = stage.now + lasting; stage.now < end;) {
      stage.wait_without(Minimal::level, 1min);
      truth += litres_an_hour / 60;
      const double step = stage.room.instruments[Minimal::level].step;
      const double reading = truth + noise_ * chance_.normal();
      stage.says(Minimal::level, step > 0 ? step * std::round(reading / step) : reading);
    }
  }
  const state::Ledger& ledger() const { return stage.state.ledger; }

  Stage stage;
  double truth = 60;

 private:
  double noise_ = 0;
  rehearsal::Chance chance_{GetParam()};
};

// Every expected value below is what the test itself let the water do. At either end of a fill the
// smoothed level may be off by its lag (4 readings of 0.13 L) and its band (0.7 L).
TEST_P(NoisyGauge, AFillGainsWhatCameAndNothingIsDrawn) {
  begin(0.5, 0.5);
  play(8, 1h);
  const double before = truth;
  const Litres gained_before = ledger().fill.gained;
  play(8, 13h);
  EXPECT_NEAR((ledger().fill.gained - gained_before).value, truth - before, 2);
  EXPECT_LT(ledger().fill.drawn.value, 2);
}

TEST_P(NoisyGauge, ADrawIsBookedWhole) {
  begin(0.5, 0.5);
  play(8, 5h);
  truth -= 20;
  play(8, 1h);
  EXPECT_NEAR(ledger().fill.drawn.value, 20, 2);
}

// 0.5 L of white noise is what was put in; 250 readings tell it to about 6 % (from memory: the
// scatter of a standard deviation is 1 / sqrt(2 n), and neighbours share two readings of three).
TEST_P(NoisyGauge, ScatterIsLearnedFromTheReadings) {
  begin(0.5, 0.5);
  play(8, 5h);
  EXPECT_NEAR(ledger().noise.spread.value, 0.5, 0.1);
}

TEST_P(NoisyGauge, ABucketIsNoScatter) {
  begin(0.1, 0.1);
  play(0, 5h);
  const double before = ledger().noise.spread.value;
  truth -= 15;
  play(0, 2min);
  EXPECT_LT(ledger().noise.spread.value, 1.1 * before);
}

TEST_P(NoisyGauge, WholePercentOfFlickerAreStillNoWater) {
  begin(2, 0.4);
  play(8, 14h);
  EXPECT_NEAR(ledger().fill.gained.value, 14 * 8, 3);  // a step hidden at one end, and the noise
  EXPECT_EQ(ledger().fill.drawn.value, 0);
}

INSTANTIATE_TEST_SUITE_P(Seeds, NoisyGauge, testing::Values(1, 2, 3));

}  // namespace
}  // namespace tidewright
