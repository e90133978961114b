#include "core/interlock/bypass.hpp"

#include <gtest/gtest.h>

#include "core/interlock/matrix.hpp"
#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::CauseId;
using room::RuleId;
using support::Stage;

constexpr std::uint32_t token = 4711;

// A fill runs in a room with two leak sensors, pump and feed valve.
class Bypass : public testing::Test {
 protected:
  void SetUp() override {
    stage.begin();
    stage.wait(3min);
    ASSERT_TRUE(stage.is_on());
  }
  Answer ask(AskKind kind, CauseId cause, Duration lasting = 0s, std::uint32_t with = token) {
    stage.happen(Ask{.kind = kind,
                     .ticket = 1,
                     .cause = cause,
                     .lasting = lasting,
                     .token = with,
                     .who = Name("ann"),
                     .why = Remark("the new sensor comes tomorrow")});
    EXPECT_EQ(stage.answers.size(), 1u);
    return stage.answers.empty() ? Answer{} : stage.answers.front();
  }
  Answer bypass(CauseId cause, Duration lasting = 0s) {
    EXPECT_EQ(ask(AskKind::bypass, cause, lasting).why.why, Why::bypass_armed);
    return ask(AskKind::confirm_bypass, cause);
  }
  const state::Bypass* standing(CauseId cause) const {
    return state::find(stage.state.bypasses, cause, stage.now);
  }
  Stage stage{support::full_room()};
};

// Source: the project's safety decisions, 13: 4 h at most, 60 min where a leak is concerned. That
// what ends a fill may not be bypassed is our own choice.
TEST_F(Bypass, NothingThatEndsAFillMayBeBypassed) {
  for (const interlock::Row& row : interlock::matrix()) {
    Duration longest{0};
    switch (row.id) {
      case CauseId::leak_wet:
      case CauseId::leak_sensor_lost:
      case CauseId::leak_sensor_awaited:
        longest = 60min;
        break;
      case CauseId::high_high_lost:
      case CauseId::pump_dry:
      case CauseId::short_cycling:
      case CauseId::product_over_stop:
      case CauseId::concentrate_full:
      case CauseId::after_unclean_start:
      case CauseId::frost:
        longest = 4h;
        break;
      default:
        break;
    }
    EXPECT_EQ(row.bypass_longest, longest) << room::name(row.id);
    const Why answer = ask(AskKind::bypass, row.id).why.why;
    EXPECT_EQ(answer == Why::bypass_armed, longest > 0s) << room::name(row.id);
    if (longest == 0s) continue;
    EXPECT_TRUE(ask(AskKind::bypass, row.id, longest).done) << room::name(row.id);
    EXPECT_EQ(ask(AskKind::bypass, row.id, longest + 1min).why.why, Why::value_out_of_range);
  }
}

TEST_F(Bypass, IsArmedThenConfirmed) {
  EXPECT_TRUE(ask(AskKind::bypass, CauseId::leak_wet).done);
  EXPECT_EQ(standing(CauseId::leak_wet), nullptr);
  stage.wait(20s);
  const Answer confirmed = ask(AskKind::confirm_bypass, CauseId::leak_wet);
  EXPECT_EQ(confirmed.why.why, Why::bypassed);
  const state::Bypass* const bypass = standing(CauseId::leak_wet);
  ASSERT_NE(bypass, nullptr);
  EXPECT_EQ(bypass->since, stage.now);
  EXPECT_EQ(bypass->until - bypass->since, 30min);
  EXPECT_EQ(bypass->who.view(), "ann");
  EXPECT_EQ(bypass->why.view(), "the new sensor comes tomorrow");
}

TEST_F(Bypass, IsNotConfirmedWithAWrongTokenNorForAnotherCauseNorLate) {
  ask(AskKind::bypass, CauseId::frost);
  EXPECT_EQ(ask(AskKind::confirm_bypass, CauseId::frost, 0s, token + 1).why.why, Why::wrong_token);
  EXPECT_EQ(ask(AskKind::confirm_bypass, CauseId::leak_wet).why.why, Why::armed_too_long_ago);
  stage.wait(31s);
  EXPECT_EQ(ask(AskKind::confirm_bypass, CauseId::frost).why.why, Why::armed_too_long_ago);
  EXPECT_FALSE(state::any(stage.state.bypasses, stage.now));
}

TEST_F(Bypass, CannotBeGuessed) {
  for (int guess = 0; guess < 3; ++guess) {
    ask(AskKind::bypass, CauseId::frost);
    ask(AskKind::confirm_bypass, CauseId::frost, 0s, token + 1);
  }
  EXPECT_EQ(ask(AskKind::bypass, CauseId::frost).why.why, Why::too_many_tries);
  stage.wait(60s);
  EXPECT_EQ(bypass(CauseId::frost).why.why, Why::bypassed);
}

TEST_F(Bypass, IsNotConfirmedByTheConfirmationOfAResetNorTheReverse) {
  stage.says(support::floor, 1);
  stage.says(support::floor, 0);
  stage.wait(2min);
  stage.happen(Ask{.kind = AskKind::reset, .ticket = 1, .alarm = RuleId::leak, .token = token});
  ASSERT_EQ(stage.answers.at(0).why.why, Why::armed);
  EXPECT_FALSE(ask(AskKind::confirm_bypass, CauseId::leak_wet).done);
  ask(AskKind::bypass, CauseId::leak_wet, 0s, token + 1);
  stage.happen(
      Ask{.kind = AskKind::confirm, .ticket = 1, .alarm = RuleId::leak, .token = token + 1});
  EXPECT_EQ(stage.answers.at(0).why.why, Why::wrong_token);
  EXPECT_TRUE(stage.state.latches[RuleId::leak].set);
}

TEST_F(Bypass, EndsToTheSecondAndWhatItCoveredActsAtOnce) {
  bypass(CauseId::leak_wet, 10min);
  stage.says(support::floor, 1);
  EXPECT_TRUE(stage.is_on());
  stage.wait(10min - 1s);
  EXPECT_TRUE(stage.is_on());
  stage.wait(1s);
  EXPECT_FALSE(stage.is_on());
  EXPECT_TRUE(stage.state.latches[RuleId::leak].set);
}

TEST_F(Bypass, IsEndedByAPerson) {
  bypass(CauseId::leak_wet);
  stage.says(support::floor, 1);
  EXPECT_TRUE(ask(AskKind::end_bypass, CauseId::leak_wet).done);
  EXPECT_FALSE(stage.is_on());
  EXPECT_EQ(ask(AskKind::end_bypass, CauseId::leak_wet).why.why, Why::not_bypassed);
}

TEST_F(Bypass, EndsWithARestart) {
  bypass(CauseId::leak_wet);
  stage.happen(Started{.clean = true});
  EXPECT_FALSE(state::any(stage.state.bypasses, stage.now));
  // And what was armed before it.
  EXPECT_FALSE(ask(AskKind::confirm_bypass, CauseId::leak_wet).done);
}

// A run that only the bypass let start ends with it, whatever its cause does to one that runs.
TEST_F(Bypass, WhatItLetStartEndsWithIt) {
  stage.happen(Link{.up = false});
  bypass(CauseId::leak_sensor_awaited, 20min);
  stage.happen(Link{.up = true});
  stage.wait_without(support::second_floor, 2min);
  EXPECT_TRUE(stage.is_on());
  stage.wait_without(support::second_floor, 19min);
  EXPECT_FALSE(stage.is_on());
}

// Frost forbids starts only: what runs goes on in it.
TEST_F(Bypass, ThatIsOverEndsNothingThatStartedLater) {
  bypass(CauseId::frost, 10min);
  stage.wait(11min);
  ASSERT_TRUE(stage.is_on());
  stage.says(support::warmth, 3);
  stage.wait(10min);
  EXPECT_TRUE(stage.is_on());
}

TEST_F(Bypass, LiftsNoLatch) {
  stage.says(support::floor, 1);
  bypass(CauseId::leak_wet);
  stage.wait(5min);
  EXPECT_FALSE(stage.is_on());
  stage.happen(Ask{.kind = AskKind::reset, .ticket = 1, .alarm = RuleId::leak, .token = token});
  EXPECT_EQ(stage.answers.at(0).why.why, Why::still_wet_or_unknown);
}

TEST_F(Bypass, OfALostLeakSensorLeavesTheOtherOneItsTrip) {
  bypass(CauseId::leak_sensor_lost);
  stage.wait_without(support::second_floor, 6min);
  ASSERT_TRUE(stage.state.findings[RuleId::leak_sensor_lost].active);
  EXPECT_TRUE(stage.is_on());
  stage.says(support::floor, 1);
  EXPECT_FALSE(stage.is_on());
}

TEST_F(Bypass, NoMoreThanFourAtOnce) {
  for (const CauseId cause : {CauseId::frost, CauseId::leak_wet, CauseId::leak_sensor_lost,
                              CauseId::leak_sensor_awaited}) {
    bypass(cause);
  }
  EXPECT_EQ(ask(AskKind::bypass, CauseId::pump_dry).why.why, Why::too_many_bypasses);
  // Asked anew it lasts anew, in its own place.
  EXPECT_EQ(bypass(CauseId::frost, 2h).why.why, Why::bypassed);
  ask(AskKind::end_bypass, CauseId::leak_wet);
  EXPECT_EQ(bypass(CauseId::pump_dry).why.why, Why::bypassed);
}

// Source: the project's safety decisions, 13.
TEST_F(Bypass, IsSaidEveryTenMinutesAlsoWhenAcknowledged) {
  bypass(CauseId::frost);
  stage.wait(1s);
  ASSERT_EQ(stage.announcements.size(), 1u);
  EXPECT_EQ(stage.announcements[0].alarm, RuleId::bypass_active);
  stage.happen(Ask{.kind = AskKind::acknowledge, .ticket = 1, .alarm = RuleId::bypass_active});
  for (int reminder = 0; reminder < 2; ++reminder) {
    stage.wait(9min);
    EXPECT_TRUE(stage.announcements.empty());
    stage.wait(1min);
    EXPECT_EQ(stage.announcements.size(), 1u);
  }
  stage.wait(10min);
  EXPECT_FALSE(stage.state.findings[RuleId::bypass_active].active);
}

}  // namespace
}  // namespace tidewright
