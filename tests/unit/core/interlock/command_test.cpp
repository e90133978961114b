#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Minimal;
using support::Stage;

long count(const std::vector<Command>& commands, bool on) {
  return std::count_if(commands.begin(), commands.end(),
                       [on](const Command& command) { return command.on == on; });
}

class Commands : public testing::Test {
 protected:
  // The vat is under START, so that a fill stands; it begins when the pump has rested.
  void SetUp() override { stage.begin(); }
  void begin_fill() {
    stage.wait(2min);
    ASSERT_TRUE(stage.is_on());
  }
  Stage stage;
};

TEST_F(Commands, OffIsSaidOnEveryConnect) {
  Stage fresh;
  fresh.happen(Started{.clean = true});
  EXPECT_TRUE(fresh.commands.empty());
  fresh.happen(Link{.up = true});
  ASSERT_EQ(fresh.commands.size(), 1u);
  EXPECT_FALSE(fresh.commands[0].on);
}

TEST_F(Commands, AFillBeginsAfterTheRest) {
  stage.wait(119s);
  EXPECT_EQ(count(stage.commands, true), 0);
  stage.wait(1s);
  EXPECT_EQ(count(stage.commands, true), 1);
}

TEST_F(Commands, OnIsRenewedEveryThirdOfItsLease) {
  begin_fill();
  stage.wait(120s);
  EXPECT_EQ(count(stage.commands, true), 3);
}

TEST_F(Commands, WetSwitchesOffInTheSamePass) {
  begin_fill();
  stage.says(Minimal::floor, 1);
  ASSERT_FALSE(stage.commands.empty());
  EXPECT_FALSE(stage.commands[0].on);
  EXPECT_FALSE(stage.is_on());
}

TEST_F(Commands, EveryWetIsAnsweredUntilOffIsConfirmed) {
  begin_fill();
  stage.plug_obeys = false;
  for (int i = 0; i < 5; ++i) {
    stage.says(Minimal::floor, 1);
    EXPECT_EQ(count(stage.commands, false), 1) << i;
    stage.now += 5ms;
  }
  stage.says(Minimal::feedback, 0);
  stage.says(Minimal::floor, 1);
  EXPECT_EQ(count(stage.commands, false), 0);
  stage.now += 500ms;
  stage.says(Minimal::floor, 1);
  EXPECT_EQ(count(stage.commands, false), 1);
}

TEST_F(Commands, OffIsRepeatedAt1And2And4Seconds) {
  begin_fill();
  stage.plug_obeys = false;
  stage.says(Minimal::floor, 1);
  stage.says(Minimal::floor, 0);
  for (const Duration repeat : {1s, 2s, 4s}) {
    stage.wait(repeat - 1ms);
    EXPECT_EQ(count(stage.commands, false), 0);
    stage.wait(1ms);
    EXPECT_EQ(count(stage.commands, false), 1);
  }
}

TEST_F(Commands, OffThatIsNotObeyedLatches) {
  begin_fill();
  stage.plug_obeys = false;
  stage.happen(Ask{.kind = AskKind::stop});
  stage.wait(9s);
  EXPECT_FALSE(stage.state.latches[room::RuleId::actuator_disobeys].set);
  stage.wait(1s);
  EXPECT_TRUE(stage.state.latches[room::RuleId::actuator_disobeys].set);
}

TEST_F(Commands, OnThatIsNotObeyedIsTriedOnceMoreThenLatches) {
  stage.plug_obeys = false;
  stage.says(Minimal::feedback, 0);
  begin_fill();
  stage.wait(11s);
  EXPECT_FALSE(stage.is_on());
  EXPECT_FALSE(stage.state.latches[room::RuleId::actuator_disobeys].set);
  stage.wait(2min);
  EXPECT_TRUE(stage.is_on());
  stage.wait(11s);
  EXPECT_TRUE(stage.state.latches[room::RuleId::actuator_disobeys].set);
}

TEST_F(Commands, UnknownFeedbackPermitsOn) {
  Stage silent;
  silent.plug_obeys = false;
  silent.happen(Started{.clean = true});
  silent.happen(Link{.up = true});
  silent.says(Minimal::floor, 0);
  silent.says(Minimal::level, 60);
  silent.wait(10min);
  EXPECT_TRUE(silent.is_on());
}

TEST_F(Commands, AHandOnTheButtonIsCutAtOnceWhereATripStands) {
  stage.says(Minimal::floor, 1);
  stage.says(Minimal::floor, 0);
  stage.says(Minimal::feedback, 1);
  EXPECT_EQ(count(stage.commands, false), 1);
}

TEST_F(Commands, AHandOnTheButtonIsOtherwiseLeftForHalfAnHour) {
  stage.happen(Ask{.kind = AskKind::stop});
  stage.plug_obeys = false;
  stage.says(Minimal::feedback, 0);
  stage.says(Minimal::feedback, 1);
  stage.wait(29min);
  EXPECT_EQ(count(stage.commands, false), 0);
  stage.wait(1min);
  EXPECT_EQ(count(stage.commands, false), 1);
}

// Safety decisions: switched by hand, it is fought no more than once a minute where no trip
// stands.
TEST_F(Commands, AHandThatStaysOnTheButtonIsToldOnceAMinute) {
  stage.happen(Ask{.kind = AskKind::stop});
  stage.plug_obeys = false;
  stage.says(Minimal::feedback, 0);
  stage.says(Minimal::feedback, 1);
  stage.wait(30min);
  EXPECT_EQ(count(stage.commands, false), 1);
  stage.wait(59s);
  EXPECT_EQ(count(stage.commands, false), 0);
  stage.wait(1s);
  EXPECT_EQ(count(stage.commands, false), 1);
}

// The same: limits of runtime hold for what was begun by hand, too.
TEST_F(Commands, AHandOnTheButtonIsCutAtTheLongestRun) {
  stage.room.actuators[0].run_longest = 20min;
  stage.happen(Ask{.kind = AskKind::stop});
  stage.plug_obeys = false;
  stage.says(Minimal::feedback, 0);
  stage.says(Minimal::feedback, 1);
  stage.wait(20min - 1s);
  EXPECT_EQ(count(stage.commands, false), 0);
  stage.wait(1s);
  EXPECT_EQ(count(stage.commands, false), 1);
  EXPECT_EQ(stage.state.drives[0].why.why, Why::run_longest);
}

TEST_F(Commands, AHandOnTheButtonIsCutAtOnceWhenWaterComes) {
  stage.happen(Ask{.kind = AskKind::stop});
  stage.says(Minimal::feedback, 1);
  stage.says(Minimal::floor, 1);
  EXPECT_EQ(count(stage.commands, false), 1);
}

TEST_F(Commands, ALostLinkEndsTheRunAndTheNextOneBeginsWithOff) {
  begin_fill();
  stage.happen(Link{.up = false});
  EXPECT_TRUE(stage.commands.empty());
  EXPECT_FALSE(stage.is_on());
  stage.happen(Link{.up = true});
  ASSERT_EQ(stage.commands.size(), 1u);
  EXPECT_FALSE(stage.commands[0].on);
}

TEST_F(Commands, StoppingSwitchesOffWhateverIsBelieved) {
  stage.happen(Stopping{});
  EXPECT_EQ(count(stage.commands, false), 1);
}

TEST_F(Commands, WhileALostGaugeIsBackButNotYetTrustedTheReasonSaysSo) {
  stage.wait_without(Minimal::level, 10min);
  EXPECT_EQ(stage.state.drives[0].why.why, Why::level_unusable);
  stage.says(Minimal::level, 60);
  stage.wait(61s);
  EXPECT_FALSE(stage.is_on());
  EXPECT_EQ(stage.state.drives[0].why.why, Why::settling_after_loss);
  stage.wait(5min);
  EXPECT_TRUE(stage.is_on());
}

TEST_F(Commands, NoMoreThanSixStartsAnHour) {
  stage.room.actuators[0].off_shortest = 1s;
  stage.room.rules[room::RuleId::level_lost].off_delay = 1s;
  long starts = 0;
  for (int i = 0; i < 60; ++i) {
    // Somebody switches it off by hand whenever it runs.
    stage.wait(59s);
    starts += count(stage.commands, true) > 0 && stage.is_on() ? 1 : 0;
    if (stage.is_on()) stage.says(Minimal::feedback, 0);
    stage.wait(1s);
  }
  EXPECT_LE(starts, 6);
  EXPECT_GE(starts, 5);
}

TEST_F(Commands, APlugThatCountsDownByItselfRunsInSeries) {
  stage.room.actuators[0].lease_kind = room::LeaseKind::plug_fixed;
  stage.room.actuators[0].lease = 30min;
  begin_fill();
  stage.wait(29min);
  EXPECT_EQ(count(stage.commands, true), 0);
  EXPECT_TRUE(stage.is_on());
  stage.says(Minimal::feedback, 0);
  EXPECT_FALSE(stage.is_on());
  stage.wait(2min);
  EXPECT_TRUE(stage.is_on());
  EXPECT_FALSE(stage.state.latches[room::RuleId::actuator_disobeys].set);
}

// Reason code 16 of PUBACK, "no matching subscribers": OASIS MQTT 5.0, 3.4.2.1.
TEST_F(Commands, AnOffThatReachedNobodyIsSaidAgainEveryMinute) {
  stage.happen(Ask{.kind = AskKind::stop});
  stage.room.instruments.pop_back();  // a plug without feedback
  stage.happen(Delivery{.actuator = 0, .on = false, .code = 16});
  stage.wait(59s);
  EXPECT_EQ(count(stage.commands, false), 0);
  stage.wait(1s);
  EXPECT_EQ(count(stage.commands, false), 1);
  stage.happen(Delivery{.actuator = 0, .on = false, .code = 0});
  stage.wait(5min);
  EXPECT_EQ(count(stage.commands, false), 0);
}

TEST_F(Commands, NoCommandOutlivesTenSeconds) {
  begin_fill();
  stage.wait(1h);
  ASSERT_FALSE(stage.commands.empty());
  for (const Command& command : stage.commands) EXPECT_LE(command.life, 10s);
}

}  // namespace
}  // namespace tidewright
