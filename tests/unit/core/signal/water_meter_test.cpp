// Flows and counts as litres that have passed, and what passes while everything is off.
#include "core/signal/water_meter.hpp"

#include <gtest/gtest.h>

#include "core/picture/picture.hpp"
#include "core/signal/running.hpp"
#include "tests/unit/core/signal/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Metered;
using support::Minimal;

class Counting : public testing::Test {
 protected:
  void SetUp() override {
    auto& meter = bench.room.instruments[Metered::product_flow];
    meter.quantity = room::Quantity::water_count;
    meter.gross_high = meter.plausible_high = 1e9;
    meter.step = 1;
    meter.wraps_at = 1000;
    shows(900);
  }
  void shows(double litres) {
    bench.says(Metered::product_flow, litres);
    bench.wait(10min);
  }
  double passed() const { return bench.state.comparison.water[1].passed.value; }
  SignalBench bench;
};

TEST_F(Counting, LitresAreTheDifferenceOfTwoCounts) {
  const double before = passed();
  shows(902);
  shows(905);
  EXPECT_EQ(passed() - before, 5);
}

TEST_F(Counting, ACountThatWrapsGoesOn) {
  shows(998);
  const double before = passed();
  shows(3);  // 2 to 1000, and 3
  EXPECT_EQ(passed() - before, 5);
}

// To have wrapped it would have had to count more than a pipe gives.
TEST_F(Counting, ACountThatRestartsBeginsAnew) {
  for (const double wraps_at : {0.0, 100'000.0}) {
    bench.room.instruments[Metered::product_flow].wraps_at = wraps_at;
    shows(900);
    const double before = passed();
    shows(895);  // as it was saved last
    shows(4);
    EXPECT_EQ(passed(), before) << wraps_at;
    shows(6);
    EXPECT_EQ(passed() - before, 2) << wraps_at;
  }
}

// For half an hour a pipe could have given a whole round of the counter.
TEST_F(Counting, ACountThatStandsStillIsNoRound) {
  const double before = passed();
  bench.wait_without(Metered::product_flow, 30min);
  bench.says(Metered::product_flow, 900);
  EXPECT_EQ(passed(), before);
}

// The most that a pipe gives in a quarter of an hour, 900 L, and a step of the counter.
TEST_F(Counting, TheMostThatAPipeGivesIsStillBelieved) {
  shows(950);
  const double before = passed();
  bench.wait_without(Metered::product_flow, 5min);
  bench.says(Metered::product_flow, 950);
  bench.wait_without(Metered::product_flow, 15min);
  bench.says(Metered::product_flow, 851);
  EXPECT_EQ(passed() - before, 901);
  bench.wait_without(Metered::product_flow, 1min);
  bench.says(Metered::product_flow, 950);
  const double again = passed();
  bench.wait_without(Metered::product_flow, 15min);
  bench.says(Metered::product_flow, 852);
  EXPECT_EQ(passed(), again) << "one litre more is a restart";
}

TEST_F(Counting, TotalsNeverFall) {
  double before = passed();
  for (int i = 0; i < 300; ++i) {
    shows((i * 7919) % 1000);
    EXPECT_GE(passed(), before);
    before = passed();
  }
}

TEST_F(Counting, WhatPassedWhileTheDaemonWasAwayIsNotBooked) {
  const double before = passed();
  bench.happen(Started{.clean = true, .away = 24h});
  bench.happen(Link{.up = true});
  shows(980);
  EXPECT_EQ(passed(), before);
  shows(981);
  EXPECT_EQ(passed() - before, 1);
}

TEST(Flow, CountsForTheTimeSinceTheReadingBefore) {
  SignalBench bench;
  bench.says(Metered::product_flow, 12);
  const double before = bench.state.comparison.water[1].passed.value;
  bench.wait(30min);
  EXPECT_NEAR(bench.state.comparison.water[1].passed.value - before, 6, 0.2);  // 12 L/h for 0.5 h
}

// A meter that was silent for a day counts no day.
TEST(Flow, CountsSilenceNoLongerThanItIsNormal) {
  SignalBench bench;
  bench.says(Metered::product_flow, 12);
  const double before = bench.state.comparison.water[1].passed.value;
  bench.wait_without(Metered::product_flow, 24h);
  bench.says(Metered::product_flow, 12);
  EXPECT_LT(bench.state.comparison.water[1].passed.value - before, 0.5);  // 90 s are 0.3 L
}

TEST(Comparison, BeginsAnewWithNothingInHand) {
  state::Comparison comparison;
  const Instant now{1000h};
  comparison.quiet = comparison.at_odds = now - 1h;
  comparison.level.open = comparison.balance.open = true;
  for (state::WaterMeter& meter : comparison.water) meter.heard = now - 1min;
  signal::begin_anew(comparison, now);
  EXPECT_EQ(comparison.quiet, never);
  EXPECT_EQ(comparison.at_odds, never);
  EXPECT_FALSE(comparison.level.open);
  EXPECT_FALSE(comparison.balance.open);
  EXPECT_EQ(comparison.compared, now);
  for (const state::WaterMeter& meter : comparison.water) EXPECT_EQ(meter.heard, long_ago);
}

// A twentieth of the membrane's 280 L a day: 0.58 L/h; the display's two steps are less.
TEST(Flow, TheLeastThatIsShownIsAFlow) {
  SignalBench bench;
  const room::Instrument& meter = bench.room.instruments[Metered::product_flow];
  const double least = signal::least_flow(bench.room, meter).value;
  EXPECT_NEAR(least, std::max(2 * meter.step, 280.0 / 24 / 20), 1e-9);
  bench.flow(least);
  bench.wait(10min);
  EXPECT_EQ(bench.state.comparison.at_odds, never) << "the pump draws, and water flows";
  bench.says(Metered::product_flow, least * 0.99);
  EXPECT_EQ(bench.state.comparison.at_odds, bench.now);
}

class AllOff : public testing::Test {
 protected:
  void SetUp() override {
    bench.happen(Ask{.kind = AskKind::stop, .ticket = 1});
    ASSERT_FALSE(bench.is_on());
    bench.flow(0);
  }
  bool leaks() const { return bench.state.latches[room::RuleId::leak].set; }
  SignalBench bench;
};

TEST_F(AllOff, TheRunDownIsNoLeak) {
  bench.says(Metered::feed_flow, 40);
  bench.wait(90s);
  bench.flow(0);
  bench.wait(1h);
  EXPECT_FALSE(leaks());
}

TEST_F(AllOff, HalfALitreIsALeak) {
  bench.wait(3min);
  bench.says(Metered::feed_flow, 40);
  bench.wait(30s);  // a third of a litre
  EXPECT_FALSE(leaks());
  bench.wait(30s);
  EXPECT_TRUE(leaks());
  EXPECT_EQ(bench.state.latches[room::RuleId::leak].cause.why, Why::flow_when_off);
  EXPECT_EQ(bench.state.latches[room::RuleId::leak].cause.subject, Metered::feed_flow);
}

// The heater is on for hours and makes no feed water flow.
TEST_F(AllOff, AHeaterThatIsOnHidesNoLeak) {
  room::Actuator heater;
  heater.id = "heater";
  heater.role = room::Role::heater;
  bench.room.actuators.push_back(heater);
  bench.state.drives[bench.room.actuators.size() - 1].on = true;
  EXPECT_TRUE(signal::feed_is_off(bench.room, bench.state.signals, bench.state.drives));
  bench.state.drives[0].on = true;
  EXPECT_FALSE(signal::feed_is_off(bench.room, bench.state.signals, bench.state.drives));
}

TEST_F(AllOff, WhatAMeterShowsAtRestIsNoFlow) {
  bench.says(Metered::feed_flow, 0.5);  // a twentieth of 280 L/day is 0.58 L/h
  bench.wait(24h);
  EXPECT_FALSE(leaks());
}

// A third of a litre each, with more than an hour [choice] in between: only where the meter said
// so.
TEST_F(AllOff, ALittleIsForgottenAfterAnHourInWhichTheMeterIsHeard) {
  for (const bool heard : {true, false}) {
    bench = SignalBench();
    SetUp();
    bench.wait(3min);
    for (int little = 0; little < 2; ++little) {
      bench.says(Metered::feed_flow, 40);
      bench.wait(30s);
      bench.says(Metered::feed_flow, 0);
      ASSERT_EQ(leaks(), !heard && little == 1);
      if (heard) {
        bench.wait(61min);
      } else {
        bench.wait_without(Metered::feed_flow, 61min);
      }
    }
  }
}

TEST_F(AllOff, WhereNoValveStopsTheWaterFlowIsNoLeak) {
  bench.room.purifier->water_stops_with = room::WaterStopsWith::pump;
  bench.wait(3min);
  bench.says(Metered::feed_flow, 40);
  bench.wait(1h);
  EXPECT_FALSE(leaks());
}

TEST_F(AllOff, ADoubtfulMeterIsBelievedASilentOneProvesNothing) {
  bench.room.instruments[Metered::feed_flow].plausible_high = 30;
  bench.wait(3min);
  bench.says(Metered::feed_flow, 40);
  bench.wait(2min);
  EXPECT_EQ(bench.quality(Metered::feed_flow), Quality::uncertain);
  EXPECT_TRUE(leaks());
  bench.wait_without(Metered::feed_flow, 30min);
  EXPECT_TRUE(bench.state.findings[room::RuleId::leak].raw);
  bench.says(Metered::feed_flow, 0);
  bench.wait(1min);
  EXPECT_FALSE(bench.state.findings[room::RuleId::leak].raw);
}

}  // namespace
}  // namespace tidewright
