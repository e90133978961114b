// The tests that look at one instrument alone: power-up, spike, flat line. Retained, stale, leap
// and the ranges stand in judge_test.
#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

#include "core/signal/spike.hpp"
#include "tests/unit/core/signal/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Minimal;
using support::Stage;

// 85 degrees Celsius is what digital one-wire thermometers say before they have measured anything
// (from memory).
class PowerUp : public testing::Test {
 protected:
  void SetUp() override {
    auto& thermometer = stage.room.instruments[Minimal::warmth];
    thermometer.power_up = 85;
    thermometer.gross_high = 125;
    stage.begin();
  }
  const state::Signal& warmth() const { return stage.signal(Minimal::warmth); }
  Stage stage;
};

TEST_F(PowerUp, AfterAGapItIsNoReading) {
  stage.wait_without(Minimal::warmth, 10min);
  stage.says(Minimal::warmth, 85);
  EXPECT_EQ(warmth().value, 20);
  EXPECT_EQ(warmth().why, Why::stale);
  stage.says(Minimal::warmth, 21);
  EXPECT_EQ(warmth().quality, Quality::good);
}

TEST_F(PowerUp, SaidAgainAndAgainItCostsTheQuality) {
  stage.happen(Link{.up = false});
  stage.happen(Link{.up = true});
  stage.says(Minimal::warmth, 85);
  stage.says(Minimal::warmth, 85);
  EXPECT_EQ(warmth().why, Why::failure_value);
  EXPECT_EQ(warmth().status, DeviceStatus::failure);
}

TEST_F(PowerUp, WithoutAGapOrInLineWithWhatWasItIsAReading) {
  stage.says(Minimal::warmth, 85);
  EXPECT_EQ(warmth().value, 85);
  stage.says(Minimal::warmth, 83);
  stage.wait_without(Minimal::warmth, 10min);
  stage.says(Minimal::warmth, 85);
  EXPECT_EQ(warmth().value, 85);
}

// By the definition of the median.
TEST(Spike, TheMedianPassesOverAsManyOutliersAsItMay) {
  for (const int of : {3, 5}) {
    room::Instrument instrument;
    instrument.median_of = of;
    state::Signal signal;
    for (int i = 0; i < of; ++i) signal::despiked(instrument, signal, 10);
    for (int spikes = 1; spikes <= of / 2; ++spikes) {
      EXPECT_EQ(signal::despiked(instrument, signal, 99), 10) << of;
    }
    EXPECT_EQ(signal::despiked(instrument, signal, 99), 99) << "it is no spike that stays";
  }
}

TEST(Spike, TheFirstReadingsAreBelievedAsTheyCome) {
  room::Instrument instrument;
  instrument.median_of = 5;
  state::Signal signal;
  EXPECT_EQ(signal::despiked(instrument, signal, 1), 1);
  EXPECT_EQ(signal::despiked(instrument, signal, 7), 7);
  EXPECT_EQ(signal::despiked(instrument, signal, 5), 5);  // of 1, 5, 7
}

TEST(Spike, WithoutTheKeyNothingIsChanged) {
  state::Signal signal;
  EXPECT_EQ(signal::despiked({}, signal, 0.1), 0.1);
  EXPECT_EQ(signal.befores, 0);
}

// Whatever comes, the median is one of the readings and lies between the least and the greatest of
// the latest.
TEST(Spike, AMedianIsOneOfTheLatest) {
  room::Instrument instrument;
  instrument.median_of = 5;
  state::Signal signal;
  std::vector<double> said;
  for (int i = 0; i < 500; ++i) {
    const double value = (i * 7919) % 97;
    said.push_back(value);
    const double median = signal::despiked(instrument, signal, value);
    const std::size_t from = said.size() > 5 ? said.size() - 5 : 0;
    std::vector<double> latest{said.begin() + static_cast<std::ptrdiff_t>(from), said.end()};
    if (latest.size() % 2 == 0) latest.erase(latest.begin());
    std::sort(latest.begin(), latest.end());
    EXPECT_EQ(median, latest[latest.size() / 2]);
  }
}

class FlatLine : public testing::Test {
 protected:
  void SetUp() override {
    bench.room.instruments[Minimal::feed].flat_after = 24h;
    bench.room.instruments[Minimal::warmth].flat_after = 48h;
  }
  SignalBench bench;
};

TEST_F(FlatLine, DissolvedSolidsThatStandStillWhileWaterRunsAreDoubtful) {
  for (int half_hours = 1; half_hours <= 48; ++half_hours) {
    EXPECT_EQ(bench.quality(Minimal::feed), Quality::good);
    bench.hold(60 + half_hours);
    bench.wait(30min);
  }
  ASSERT_TRUE(bench.is_on());
  EXPECT_EQ(bench.why(Minimal::feed), Why::flat_line);
  EXPECT_EQ(bench.quality(Minimal::feed), Quality::uncertain);
  EXPECT_EQ(bench.signal(Minimal::feed).status, DeviceStatus::maintenance_required);
  bench.says(Minimal::feed, 302);
  EXPECT_EQ(bench.quality(Minimal::feed), Quality::good);
}

TEST_F(FlatLine, StandingWaterMayStandStill) {
  bench.happen(Ask{.kind = AskKind::stop, .ticket = 1});
  ASSERT_FALSE(bench.is_on());
  bench.wait(72h);
  EXPECT_EQ(bench.quality(Minimal::feed), Quality::good);
}

TEST_F(FlatLine, WhatTheHouseholdNamesIsJudgedAlways) {
  bench.happen(Ask{.kind = AskKind::stop, .ticket = 1});
  bench.wait(47h);
  EXPECT_EQ(bench.quality(Minimal::warmth), Quality::good);
  bench.wait(1h);
  EXPECT_EQ(bench.why(Minimal::warmth), Why::flat_line);
}

TEST_F(FlatLine, PureWaterShowsZeroForYears) {
  bench.room.instruments[Minimal::product].flat_after = 1h;
  bench.wait(6h);
  EXPECT_EQ(bench.quality(Minimal::product), Quality::good);
}

}  // namespace
}  // namespace tidewright
