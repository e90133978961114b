#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::RuleId;
using support::Minimal;
using support::Stage;

constexpr std::uint32_t token = 4711;

class Reset : public testing::Test {
 protected:
  void SetUp() override {
    stage.begin();
    stage.wait(2min);
    stage.says(Minimal::floor, 1);
    ASSERT_TRUE(latched());
  }
  bool latched() const { return stage.state.latches[RuleId::leak].set; }
  const Answer& ask(AskKind kind, std::uint32_t with = token) {
    stage.happen(Ask{.kind = kind, .ticket = 1, .alarm = RuleId::leak, .token = with});
    EXPECT_EQ(stage.answers.size(), 1u);
    return stage.answers.at(0);
  }
  void dry_up() {
    stage.says(Minimal::floor, 0);
    stage.now += 60s;
    stage.says(Minimal::floor, 0);
  }
  Stage stage;
};

TEST_F(Reset, DryAloneDoesNotClearTheLatch) {
  dry_up();
  stage.wait(3h);
  EXPECT_TRUE(latched());
  EXPECT_FALSE(stage.is_on());
}

TEST_F(Reset, IsRefusedWhileWet) {
  EXPECT_EQ(ask(AskKind::reset).why.why, Why::still_wet_or_unknown);
}

TEST_F(Reset, IsRefusedAfterOneDryReport) {
  stage.says(Minimal::floor, 0);
  EXPECT_EQ(ask(AskKind::reset).why.why, Why::still_wet_or_unknown);
}

TEST_F(Reset, TwoDryReportsAfterARestartAreEnough) {
  stage.happen(Started{.clean = true, .away = 1min});
  stage.happen(Link{.up = true});
  stage.now += 5s;
  stage.says(Minimal::floor, 0);
  EXPECT_EQ(ask(AskKind::reset).why.why, Why::still_wet_or_unknown);
  stage.now += 60s;
  stage.says(Minimal::floor, 0);
  EXPECT_EQ(ask(AskKind::reset).why.why, Why::armed);
}

TEST_F(Reset, IsRefusedWhenTheSensorHasFallenSilent) {
  dry_up();
  stage.wait_without(Minimal::floor, 4min);
  EXPECT_EQ(ask(AskKind::reset).why.why, Why::still_wet_or_unknown);
}

TEST_F(Reset, IsArmedThenConfirmedAndStartsNothing) {
  dry_up();
  const Answer armed = ask(AskKind::reset);
  EXPECT_TRUE(armed.done);
  EXPECT_EQ(armed.why.why, Why::armed);
  EXPECT_TRUE(latched());
  EXPECT_TRUE(ask(AskKind::confirm).done);
  EXPECT_FALSE(latched());
  stage.wait(3h);
  EXPECT_FALSE(stage.is_on());
  stage.happen(Ask{.kind = AskKind::start});
  stage.wait(3min);
  EXPECT_TRUE(stage.is_on());
}

TEST_F(Reset, WrongTokenDoesNothing) {
  dry_up();
  ask(AskKind::reset);
  EXPECT_EQ(ask(AskKind::confirm, token + 1).why.why, Why::wrong_token);
  EXPECT_TRUE(latched());
}

TEST_F(Reset, AskingAnewGivesNoNewTries) {
  // One guess in 900 000 each: without a count that outlives the reset, a program would guess on.
  dry_up();
  for (int guess = 0; guess < 3; ++guess) {
    ask(AskKind::reset);
    EXPECT_EQ(ask(AskKind::confirm, token + 1).why.why, Why::wrong_token);
  }
  EXPECT_EQ(ask(AskKind::reset).why.why, Why::too_many_tries);
  stage.wait(60s);
  EXPECT_EQ(ask(AskKind::reset).why.why, Why::armed);
  EXPECT_TRUE(ask(AskKind::confirm).done);
}

TEST_F(Reset, IsForgottenAfterThirtySeconds) {
  dry_up();
  ask(AskKind::reset);
  stage.wait(31s);
  EXPECT_EQ(ask(AskKind::confirm).why.why, Why::armed_too_long_ago);
}

TEST_F(Reset, ConfirmWithoutResetDoesNothing) {
  dry_up();
  EXPECT_FALSE(ask(AskKind::confirm).done);
  EXPECT_TRUE(latched());
}

TEST_F(Reset, WaterThatComesBackBetweenTheTwoIsSeen) {
  dry_up();
  ask(AskKind::reset);
  stage.says(Minimal::floor, 1);
  EXPECT_EQ(ask(AskKind::confirm).why.why, Why::still_wet_or_unknown);
  EXPECT_TRUE(latched());
}

TEST_F(Reset, AcknowledgingAndShelvingChangeNoCommand) {
  dry_up();
  stage.happen(Ask{.kind = AskKind::acknowledge, .alarm = RuleId::leak});
  stage.happen(Ask{.kind = AskKind::shelve, .alarm = RuleId::leak, .lasting = 1h});
  stage.wait(2h);
  EXPECT_TRUE(latched());
  EXPECT_FALSE(stage.is_on());
}

TEST_F(Reset, StartIsRefusedWhileALatchStands) {
  dry_up();
  stage.happen(Ask{.kind = AskKind::start, .ticket = 1});
  ASSERT_EQ(stage.answers.size(), 1u);
  EXPECT_EQ(stage.answers[0].why.why, Why::held_by_latch);
}

TEST_F(Reset, OfSomethingThatIsNotLatchedIsRefused) {
  stage.happen(Ask{.kind = AskKind::reset, .ticket = 1, .alarm = RuleId::vat_high_high});
  EXPECT_EQ(stage.answers.at(0).why.why, Why::not_latched);
}

TEST_F(Reset, TheFirstCauseIsKeptUntilItIsReset) {
  stage.plug_obeys = false;
  stage.says(Minimal::feedback, 1);
  stage.wait(20s);
  ASSERT_TRUE(stage.state.latches[RuleId::actuator_disobeys].set);
  EXPECT_TRUE(stage.state.latches[RuleId::leak].first);
  EXPECT_FALSE(stage.state.latches[RuleId::actuator_disobeys].first);
  dry_up();
  ask(AskKind::reset);
  ask(AskKind::confirm);
  EXPECT_TRUE(stage.state.latches[RuleId::actuator_disobeys].first);
}

}  // namespace
}  // namespace tidewright
