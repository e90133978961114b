// Many alarms at once, a line that is away, and a restart. Five in ten minutes are a flood [choice,
// after the alarm rates of EEMUA 191, from memory].
#include <gtest/gtest.h>

#include "tests/unit/core/alarm/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using alarm::AlarmState;
using room::RuleId;

// Four alarms told one by one; the next one makes it a flood.
AlarmBench four_alarms() {
  AlarmBench bench;
  bench.condition(RuleId::pump_dry, true);
  bench.condition(RuleId::level_lost, true);
  bench.condition(RuleId::vat_low, true);
  bench.condition(RuleId::store_failed, true);
  EXPECT_EQ(bench.told(Announced::raised), 4);
  return bench;
}

TEST(AlarmFlood, TheFifthInTenMinutesIsASummaryThatNamesTheFirst) {
  AlarmBench bench = four_alarms();
  bench.condition(RuleId::short_cycling, true);
  EXPECT_EQ(bench.told(Announced::raised), 4);
  ASSERT_EQ(bench.told(Announced::summary), 1);
  EXPECT_EQ(bench.announced.back().alarm, RuleId::pump_dry);
  EXPECT_EQ(bench.state(RuleId::short_cycling), AlarmState::unacknowledged);
  EXPECT_TRUE(std::holds_alternative<Persist>(bench.effects[0]));
}

TEST(AlarmFlood, MoreOfItAreToldTogetherTenMinutesLater) {
  AlarmBench bench = four_alarms();
  bench.condition(RuleId::short_cycling, true);
  bench.condition(RuleId::resin_breakthrough, true, 5min);
  bench.condition(RuleId::fill_overlong, true);
  EXPECT_EQ(bench.announced.size(), 5u);
  EXPECT_LE(bench.wake.at, bench.circumstances.now + 5min);
  bench.pass(bench.wake.at - bench.circumstances.now);
  EXPECT_EQ(bench.told(Announced::summary), 1);
  EXPECT_EQ(bench.told(Announced::raised), 6) << "the flood is over: two are told by themselves";
}

TEST(AlarmFlood, WhatIsUrgentIsToldByItself) {
  AlarmBench bench = four_alarms();
  bench.condition(RuleId::short_cycling, true);
  bench.condition(RuleId::leak, true);
  EXPECT_EQ(bench.announced.back().alarm, RuleId::leak);
  EXPECT_EQ(bench.announced.back().event, Announced::raised);
}

TEST(AlarmFlood, FourInTenMinutesAreNone) {
  AlarmBench bench = four_alarms();
  bench.condition(RuleId::short_cycling, true, 10min);
  EXPECT_EQ(bench.told(Announced::summary), 0);
  EXPECT_EQ(bench.told(Announced::raised), 5);
}

TEST(AlarmLife, WhileTheLineIsDownNothingIsSaidAgainAndThenOnce) {
  // An hour of reminders, kept for a line that is away, would push the first word out.
  AlarmBench bench;
  bench.condition(RuleId::leak, true);
  bench.circumstances.link_up = false;
  for (int i = 0; i < 60; ++i) bench.pass(1min);
  EXPECT_EQ(bench.told(Announced::reminder), 0);
  bench.circumstances.link_up = true;
  bench.pass(1s);
  EXPECT_EQ(bench.told(Announced::reminder), 1);
}

TEST(AlarmLife, WhatWasToldBeforeARestartIsSaidAgainAMinuteAfterIt) {
  AlarmBench bench;
  bench.condition(RuleId::vat_low, true);
  bench.condition(RuleId::pump_dry, true);
  bench.ask(AskKind::acknowledge, RuleId::pump_dry);
  bench.pass(1h);
  bench.circumstances.started = bench.circumstances.now;
  bench.pass(1s);
  EXPECT_EQ(bench.told(Announced::reminder), 0);
  bench.pass(1min);
  ASSERT_EQ(bench.told(Announced::reminder), 1) << "what somebody has acknowledged stays quiet";
  EXPECT_EQ(bench.announced.back().alarm, RuleId::vat_low);
  bench.pass(1h);
  EXPECT_EQ(bench.told(Announced::reminder), 1);
}

}  // namespace
}  // namespace tidewright
