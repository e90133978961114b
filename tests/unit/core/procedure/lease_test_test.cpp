#include "core/procedure/lease_test.hpp"

#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::LeaseKind;
using room::RuleId;
using state::LeasePhase;
using support::Minimal;
using support::Stage;

// The vat at 100 L, above START: nothing wants water. The plug's lease is 120 s.
class LeaseTest : public testing::Test {
 protected:
  void SetUp() override { begin(support::minimal_room()); }
  void begin(room::Room room) {
    stage = Stage(std::move(room));
    stage.begin();
    stage.says(Minimal::level, 100);
    stage.happen(Ask{.kind = AskKind::stop, .ticket = 1});
    stage.wait(3min);
    stage.happen(Ask{.kind = AskKind::stop, .ticket = 1, .lasting = 1min});
    stage.wait(2min);
    ASSERT_FALSE(stage.is_on());
  }
  Answer ask(room::ActuatorIndex actuator = 0) {
    stage.happen(Ask{.kind = AskKind::test_lease, .ticket = 1, .actuator = actuator});
    EXPECT_EQ(stage.answers.size(), 1u);
    return stage.answers.empty() ? Answer{} : stage.answers.front();
  }
  const state::Proof& result() const { return stage.state.lease_tests.results[0]; }
  LeasePhase phase() const { return stage.state.lease_tests.under_way.phase; }
  bool has_alarm() const { return stage.state.findings[RuleId::lease_not_kept].active; }
  // Asked for, and renewed three times long.
  void come_to_silence() {
    ASSERT_EQ(ask().why.why, Why::lease_tried);
    stage.wait(6min + 1s);
    ASSERT_EQ(phase(), LeasePhase::silent);
  }
  void goes_off_by_itself() { stage.says(Minimal::feedback, 0); }
  Stage stage;
};

// Three renewals and what follows, of two minutes each, and ten to begin within [choice].
TEST_F(LeaseTest, TellsHowLongItTakesAtMost) {
  const Answer answer = ask();
  ASSERT_EQ(answer.why.why, Why::lease_tried);
  EXPECT_EQ(answer.why.numbers[0], 20);
}

// Ten minutes to begin within [choice]: the pump rests for longer.
TEST_F(LeaseTest, ThatCannotBeginIsOverAfterTenMinutesExactly) {
  stage.room.actuators[0].off_shortest = 1h;
  ASSERT_EQ(ask().why.why, Why::lease_tried);
  const Instant asked = stage.now;
  while (stage.now < asked + 10min - 1ms) {
    stage.wait(std::min<Duration>(1min, asked + 10min - 1ms - stage.now));
    ASSERT_EQ(phase(), LeasePhase::waiting) << seconds(stage.now - asked);
  }
  stage.wait(1ms);
  EXPECT_NE(phase(), LeasePhase::waiting);
}

// Source: the project's safety decisions, 3: three renewals, the feedback stays ON for three times
// the lease, then silence must bring OFF.
TEST_F(LeaseTest, IsKeptByAPlugThatGoesOffByItself) {
  come_to_silence();
  EXPECT_TRUE(stage.is_on());
  stage.wait(70s);
  EXPECT_TRUE(stage.commands.empty());
  stage.wait(50s);
  EXPECT_TRUE(result().passed);
  stage.wait(1h);
  EXPECT_FALSE(stage.is_on());
  EXPECT_FALSE(has_alarm());
}

TEST_F(LeaseTest, IsRenewedEveryThirdOfTheLeaseBefore) {
  ask();
  std::size_t ons = stage.commands.size();
  stage.wait(6min);
  for (const Command& command : stage.commands) ons += command.on ? 1 : 0;
  EXPECT_GE(ons, 9u);  // 360 s / 40 s
}

TEST_F(LeaseTest, FailsAPlugThatStaysOn) {
  stage.plug_has_timer = false;
  come_to_silence();
  stage.wait(110s);
  EXPECT_TRUE(stage.is_on());
  stage.wait(1min);
  EXPECT_FALSE(stage.is_on());
  EXPECT_TRUE(state::has_failed(result()));
  EXPECT_TRUE(has_alarm());
}

TEST_F(LeaseTest, FailsAPlugThatGoesOffAlthoughItIsRenewed) {
  ask();
  stage.wait(120s);
  goes_off_by_itself();
  EXPECT_TRUE(state::has_failed(result()));
}

TEST_F(LeaseTest, AfterAFailureWaterIsMadeOnlyWhileSomebodyIsThere) {
  stage.plug_has_timer = false;
  come_to_silence();
  stage.wait(3min);
  ASSERT_TRUE(has_alarm());
  stage.says(Minimal::level, 60);
  stage.wait(10min);
  EXPECT_FALSE(stage.is_on());
  EXPECT_EQ(stage.state.drives[0].why.why, Why::lease_not_kept);
  stage.happen(Ask{.kind = AskKind::start, .ticket = 1, .lasting = 10min});
  stage.wait(3min);
  EXPECT_TRUE(stage.is_on());
  stage.happen(Ask{.kind = AskKind::start, .ticket = 1});
  stage.wait(3min);
  ASSERT_FALSE(stage.is_on());  // water is needed, but first this
  stage.plug_has_timer = true;
  come_to_silence();
  stage.wait(2min);
  EXPECT_FALSE(has_alarm());
  stage.wait(3min);
  EXPECT_TRUE(stage.is_on());
}

TEST_F(LeaseTest, AHandOnTheButtonProvesNothing) {
  come_to_silence();
  stage.wait(30s);
  goes_off_by_itself();
  EXPECT_EQ(result().at, long_ago);
  stage.wait(1s);
  EXPECT_EQ(phase(), LeasePhase::none);
}

// Nine tenths of the lease, 108 s, are the least that a plug's own timer is believed [choice].
TEST_F(LeaseTest, ItIsTheTimerFromNineTenthsOnToTheMillisecond) {
  for (const Duration early : {0ms, 1ms}) {
    begin(support::minimal_room());
    come_to_silence();
    stage.wait(stage.state.lease_tests.under_way.since + 108s - early - stage.now);
    ASSERT_TRUE(stage.is_on());
    goes_off_by_itself();
    EXPECT_EQ(result().passed, early == 0ms);
  }
}

TEST_F(LeaseTest, WithoutAWordOfThePlugItProvesNothing) {
  stage.plug_has_timer = false;
  come_to_silence();
  stage.happen(Availability{Minimal::feedback, false});
  stage.wait(4min);
  EXPECT_EQ(phase(), LeasePhase::none);
  EXPECT_EQ(result().at, long_ago);
  EXPECT_FALSE(stage.is_on());
}

TEST_F(LeaseTest, OfAPlugWhoseTimerIsNotRenewedIsSilentFromTheFirstOnOn) {
  room::Room room = support::minimal_room();
  room.actuators[0].lease_kind = LeaseKind::plug_fixed;
  begin(std::move(room));
  ask();
  stage.wait(119s);
  EXPECT_EQ(phase(), LeasePhase::silent);
  EXPECT_TRUE(stage.is_on());
  stage.wait(1s);
  EXPECT_TRUE(result().passed);
  // Where the plug does not, our own clock must not hide that.
  stage.plug_has_timer = false;
  stage.wait(3min);
  ask();
  stage.wait(130s);
  EXPECT_TRUE(stage.is_on());
  stage.wait(1min);
  EXPECT_TRUE(state::has_failed(result()));
}

TEST_F(LeaseTest, IsRefusedWhereItCannotBe) {
  EXPECT_EQ(ask(7).why.why, Why::no_such_thing);
  room::Room room = support::minimal_room();
  room.actuators[0].lease_kind = LeaseKind::none;
  begin(room);
  EXPECT_EQ(ask().why.why, Why::lease_unsupervised);
  room.actuators[0].lease_kind = LeaseKind::plug;
  room.instruments.pop_back();  // the feedback
  begin(room);
  EXPECT_EQ(ask().why.why, Why::no_feedback);
}

TEST_F(LeaseTest, IsRefusedWhileWaterIsNeeded) {
  stage.says(Minimal::level, 60);
  EXPECT_EQ(ask().why.why, Why::not_at_rest);
  stage.wait(3min);
  ASSERT_TRUE(stage.is_on());
  EXPECT_EQ(ask().why.why, Why::not_at_rest);
}

TEST_F(LeaseTest, IsRefusedWhileAnythingStandsAgainstIt) {
  stage.says(Minimal::warmth, 2);
  EXPECT_EQ(ask().why.why, Why::frost);
  stage.says(Minimal::warmth, 20);
  stage.says(Minimal::level, 180);
  EXPECT_EQ(ask().why.why, Why::level_at_stop);
  stage.says(Minimal::level, 100);
  stage.says(Minimal::floor, 1);
  EXPECT_FALSE(ask().done);
  EXPECT_FALSE(stage.is_on());
}

TEST_F(LeaseTest, EndsAtOnceWhereTheInterlockSaysSoAndProvesNothing) {
  for (const Duration after : {1min, 7min}) {  // while renewed, while silent
    begin(support::minimal_room());
    ask();
    stage.wait(after);
    ASSERT_TRUE(stage.is_on());
    stage.says(Minimal::floor, 1);
    EXPECT_FALSE(stage.is_on());
    stage.wait(1h);
    EXPECT_FALSE(stage.is_on());
    EXPECT_EQ(phase(), LeasePhase::none);
    EXPECT_EQ(result().at, long_ago);
  }
}

TEST_F(LeaseTest, EndsWithAPersonsStop) {
  come_to_silence();
  stage.happen(Ask{.kind = AskKind::stop, .ticket = 1});
  EXPECT_FALSE(stage.is_on());
  stage.wait(10min);
  EXPECT_FALSE(stage.is_on());
  EXPECT_EQ(result().at, long_ago);
}

TEST_F(LeaseTest, OfAHeaterBringsNobodyToAFill) {
  room::Room room = support::whole_room();
  room.actuators[*room::find(room, room::Role::booster_pump)].lease_kind = LeaseKind::none;
  begin(room);
  stage.says(support::Whole::mixing_level, 60);
  ASSERT_TRUE(ask(*room::find(room, room::Role::heater)).done);
  stage.says(Minimal::level, 60);
  stage.wait(3min);
  EXPECT_TRUE(stage.is_on(*room::find(room, room::Role::heater)));
  EXPECT_FALSE(stage.is_on(*room::find(room, room::Role::booster_pump)));
  EXPECT_EQ(stage.state.drives[0].why.why, Why::lease_unsupervised);
}

TEST_F(LeaseTest, GivesWayToAFill) {
  come_to_silence();
  stage.says(Minimal::level, 60);
  stage.wait(5min);
  EXPECT_TRUE(stage.is_on());
  EXPECT_EQ(stage.state.drives[0].why.why, Why::below_start);
  EXPECT_EQ(result().at, long_ago);
}

TEST_F(LeaseTest, EndsWithARestartWhichForgetsNoResult) {
  come_to_silence();
  stage.wait(2min);
  const Instant at = result().at;
  ask();
  stage.happen(Started{.clean = true});
  EXPECT_EQ(phase(), LeasePhase::none);
  EXPECT_EQ(result().at, at);
}

TEST_F(LeaseTest, WhatCannotRunAloneRunsWithIt) {
  begin(support::full_room());
  ask(1);  // the feed valve: the pump must not run dry
  stage.wait(1min);
  EXPECT_TRUE(stage.is_on(0));
  EXPECT_TRUE(stage.is_on(1));
  stage.wait(65s);  // 3 times 30 s, then it is silent, and the valve goes off by itself
  EXPECT_FALSE(stage.is_on(0));
  EXPECT_FALSE(stage.is_on(1));
  EXPECT_TRUE(stage.state.lease_tests.results[1].passed);
  EXPECT_EQ(result().at, long_ago);
}

// By itself: at the end of a fill, STOP being at 180 L.
class LeaseTestByItself : public LeaseTest {
 protected:
  void SetUp() override {
    begin(support::minimal_room());
    stage.says(Minimal::level, 60);
    stage.wait(10min);
    ASSERT_TRUE(stage.is_on());
  }
};

TEST_F(LeaseTestByItself, WaitsForTheEndOfAFillAndLetsItGoOn) {
  EXPECT_EQ(phase(), LeasePhase::none);  // due since the first start, but water is needed
  stage.says(Minimal::level, 177);
  EXPECT_EQ(phase(), LeasePhase::silent);
  stage.wait(70s);
  EXPECT_TRUE(stage.commands.empty());
  stage.wait(50s);
  EXPECT_TRUE(result().passed);
  EXPECT_FALSE(stage.is_on());
  stage.wait(3min);
  EXPECT_TRUE(stage.is_on());
  stage.wait(10min);
  EXPECT_EQ(phase(), LeasePhase::none);  // not again within a week
  stage.says(Minimal::level, 180);
  EXPECT_FALSE(stage.is_on());
}

TEST_F(LeaseTestByItself, NotWhileAnythingForbidsAStart) {
  stage.says(Minimal::warmth, 2);
  stage.says(Minimal::level, 177);
  EXPECT_TRUE(stage.is_on());  // frost forbids a start, and what runs goes on
  EXPECT_EQ(phase(), LeasePhase::none);
}

TEST_F(LeaseTestByItself, NotWhileAnythingIsBypassed) {
  for (const AskKind kind : {AskKind::bypass, AskKind::confirm_bypass}) {
    stage.happen(Ask{.kind = kind, .ticket = 1, .cause = room::CauseId::frost, .token = 1});
  }
  stage.says(Minimal::level, 177);
  EXPECT_EQ(phase(), LeasePhase::none);
}

TEST_F(LeaseTestByItself, NotWhileTheRunIsAPersons) {
  stage.happen(Ask{.kind = AskKind::start, .ticket = 1, .lasting = 1h});
  stage.wait(10min);
  stage.says(Minimal::level, 177);
  EXPECT_EQ(phase(), LeasePhase::none);
}

TEST_F(LeaseTestByItself, StopIsALimitInSilenceToo) {
  stage.says(Minimal::level, 177);
  ASSERT_EQ(phase(), LeasePhase::silent);
  stage.says(Minimal::level, 180);
  EXPECT_FALSE(stage.is_on());
  EXPECT_EQ(result().at, long_ago);
}

}  // namespace
}  // namespace tidewright
