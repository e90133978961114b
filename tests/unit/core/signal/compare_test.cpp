// What instruments say of one another. The limits are our own choice, written beside the code.
#include "core/signal/compare.hpp"

#include <gtest/gtest.h>

#include "core/picture/picture.hpp"
#include "core/signal/gauge_and_flow.hpp"
#include "core/signal/ruling.hpp"
#include "tests/unit/core/signal/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::Place;
using room::Quantity;
using support::Full;
using support::Metered;
using support::Minimal;

picture::Picture seen(const SignalBench& bench) { return picture::draw(bench.room, bench.state); }

TEST(Twins, ThatDifferForThreeReportsAreBothDoubtful) {
  SignalBench bench;
  bench.says(Minimal::level, 100);
  bench.says(Metered::level_twin, 120);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good) << "one of them is late";
  bench.wait(3min - 1s);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good);
  bench.wait(1s);
  for (const room::InstrumentIndex i :
       {room::InstrumentIndex{Minimal::level}, room::InstrumentIndex{Metered::level_twin}}) {
    EXPECT_EQ(bench.quality(i), Quality::uncertain);
    EXPECT_EQ(bench.signal(i).status, DeviceStatus::out_of_specification);
    EXPECT_EQ(bench.why(i), Why::twins_disagree);
  }
  EXPECT_EQ(bench.signal(Minimal::level).against, Metered::level_twin);
  EXPECT_EQ(bench.signal(Minimal::level).doubt_numbers, (std::array<float, 2>{100, 120}));
}

// What is doubted and then talks garbage is lost; that its twin goes on disagreeing does not help
// it.
TEST(Twins, ADoubtDoesNotBringBackWhatIsLost) {
  SignalBench bench;
  bench.says(Minimal::level, 100);
  bench.says(Metered::level_twin, 120);
  bench.wait(5min);
  ASSERT_EQ(bench.why(Minimal::level), Why::twins_disagree);
  for (int n = 0; n < 2; ++n) bench.happen(Refusal{Minimal::level});
  EXPECT_EQ(bench.quality(Minimal::level), Quality::bad);
  bench.says(Metered::level_twin, 121);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::bad);
  EXPECT_EQ(bench.why(Minimal::level), Why::not_a_reading);
}

TEST(Twins, AreBelievedAgainWhenTheyAgree) {
  SignalBench bench;
  bench.says(Minimal::level, 100);
  bench.says(Metered::level_twin, 120);
  bench.wait(10min);
  bench.says(Metered::level_twin, 104);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good);
  EXPECT_EQ(bench.quality(Metered::level_twin), Quality::good);
}

// 6 L are allowed, and a step of 2 L of each.
TEST(Twins, AgreeWithinTheirTolerance) {
  SignalBench bench;
  bench.says(Minimal::level, 100);
  bench.says(Metered::level_twin, 110);
  bench.wait(1h);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good);
  bench.says(Metered::level_twin, 111);
  bench.wait(3min);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::uncertain);
}

TEST(Twins, TheMoreDangerousRulesAndOneThatIsSilentDoesNotMuteTheOther) {
  SignalBench bench;
  bench.says(Minimal::level, 100);
  bench.says(Metered::level_twin, 106);
  EXPECT_EQ(seen(bench).level, Litres{106});
  bench.wait_without(Metered::level_twin, 10min);
  EXPECT_EQ(bench.why(Metered::level_twin), Why::stale);
  EXPECT_EQ(seen(bench).level, Litres{100});
}

TEST(Twins, OfAThermometerTheColderRules) {
  SignalBench bench;
  room::Instrument twin = bench.room.instruments[Minimal::warmth];
  twin.twin_of = Minimal::warmth;
  bench.room.instruments.push_back(twin);
  const auto i = static_cast<room::InstrumentIndex>(bench.room.instruments.size() - 1);
  for (const auto& [index, value] :
       {std::pair{room::InstrumentIndex{Minimal::warmth}, 6.0}, {i, 5.0}}) {
    bench.state.signals[index].seen = true;
    bench.state.signals[index].quality = Quality::good;
    bench.state.signals[index].value = value;
  }
  EXPECT_EQ(signal::ruling(bench.room, bench.state.signals, Quantity::temperature, Place::room), i);
}

TEST(GaugeAndFloat, AGaugeBelowStopIsBadWhileTheHighestFloatIsLifted) {
  SignalBench bench;
  bench.hold(100);
  bench.says(Full::high_high, 1, Arrival::retained);  // at any age
  EXPECT_EQ(bench.quality(Minimal::level), Quality::bad);
  EXPECT_EQ(bench.signal(Minimal::level).status, DeviceStatus::failure);
  EXPECT_EQ(bench.why(Minimal::level), Why::below_the_float);
  EXPECT_EQ(bench.signal(Minimal::level).against, Full::high_high);
  bench.hold(190);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good) << "at STOP and above they agree";
  bench.hold(100);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::bad);
  bench.says(Full::high_high, 0);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good);
}

TEST(GaugeAndFlow, AgreeWhenTheVatGainsWhatTheMeterCounts) {
  SignalBench bench;
  for (int hour = 0; hour < 4; ++hour) bench.fill_an_hour(10, 10);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good);
  EXPECT_EQ(bench.quality(Metered::product_flow), Quality::good);
  EXPECT_NEAR(bench.state.comparison.water[1].passed.value, 40, 0.5);  // 4 h of 10 L/h
}

TEST(GaugeAndFlow, MoreByTheMeterMakesBothDoubtfulAndStopsTheFill) {
  SignalBench bench;
  bench.fill_until_off(10, 4);
  EXPECT_EQ(bench.why(Metered::product_flow), Why::flow_against_level);
  EXPECT_EQ(bench.why(Minimal::level), Why::level_against_flow);
  EXPECT_FALSE(bench.is_on());
  bench.wait(15min);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good) << "it is tried again";
}

TEST(GaugeAndFlow, MoreByTheGaugeDoubtsTheMeterOnlyAndTheFillGoesOn) {
  SignalBench bench;
  for (int hour = 0; hour < 2; ++hour) bench.fill_an_hour(4, 12);
  EXPECT_EQ(bench.why(Metered::product_flow), Why::flow_against_level);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good);
  EXPECT_TRUE(bench.is_on());
}

TEST(GaugeAndFlow, SomebodysBucketIsNoDisagreement) {
  SignalBench bench;
  bench.fill_an_hour(10, 10);
  bench.hold(bench.signal(Minimal::level).value + 40);
  bench.fill_an_hour(10, 10);
  bench.hold(bench.signal(Minimal::level).value - 60);
  bench.fill_an_hour(10, 10);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::good);
  EXPECT_EQ(bench.quality(Metered::product_flow), Quality::good);
}

TEST(GaugeAndFlow, WhatIsDivertedIsNoDisagreement) {
  for (const bool diverted : {false, true}) {
    SignalBench bench;
    room::Actuator divert;
    divert.role = room::Role::divert_valve;
    bench.room.actuators.push_back(divert);
    state::Drives drives = bench.state.drives;
    drives[bench.room.actuators.size() - 1].on = diverted;
    state::Circumstances known = bench.state.circumstances;
    state::Comparison comparison;
    Wake wake;
    for (int litre = 0; litre <= 20; ++litre) {
      known.now += 5min;
      comparison.water[1].passed = Litres{1.0 * litre};
      signal::compare_gauge_with_flow({bench.room, known, drives}, bench.state.signals, comparison,
                                      wake);
    }
    EXPECT_EQ(bench.why(Minimal::level) == Why::level_against_flow, !diverted);
  }
}

TEST(GaugeAndFloat, AGaugeOfAnotherVatIsNotMeant) {
  SignalBench bench;
  room::Instrument other = bench.room.instruments[Minimal::level];
  other.place = Place::mixing_vat;
  bench.room.instruments.push_back(other);
  const auto i = static_cast<room::InstrumentIndex>(bench.room.instruments.size() - 1);
  bench.happen(Reading{.instrument = i, .value = 50});
  bench.says(Full::high_high, 1);
  EXPECT_EQ(bench.quality(i), Quality::good);
  EXPECT_EQ(bench.quality(Minimal::level), Quality::bad);
}

TEST(Balance, WaterThatIsMissingMakesAllThreeDoubtful) {
  SignalBench bench;
  bench.flow(10);
  bench.wait(40min);
  EXPECT_EQ(bench.quality(Metered::feed_flow), Quality::good);
  bench.says(Metered::concentrate_flow, 15);  // of 30
  bench.wait(70min);
  for (const auto i : {Metered::feed_flow, Metered::product_flow, Metered::concentrate_flow}) {
    EXPECT_EQ(bench.why(i), Why::flows_unbalanced) << i;
  }
  bench.says(Metered::concentrate_flow, 30);
  bench.wait(70min);
  EXPECT_EQ(bench.quality(Metered::feed_flow), Quality::good);
}

TEST(PowerAndFlow, APumpThatDrawsAndMovesNothingMakesBothDoubtful) {
  SignalBench bench;
  ASSERT_TRUE(bench.is_on());
  bench.flow(0);
  bench.wait(4min);
  EXPECT_EQ(bench.quality(Metered::product_flow), Quality::good);
  bench.wait(2min);
  EXPECT_EQ(bench.why(Metered::product_flow), Why::power_without_flow);
  EXPECT_EQ(bench.why(Full::power), Why::power_without_flow);
  bench.says(Metered::product_flow, 8);
  EXPECT_EQ(bench.quality(Metered::product_flow), Quality::good);
  EXPECT_EQ(bench.quality(Full::power), Quality::good);
}

}  // namespace
}  // namespace tidewright
