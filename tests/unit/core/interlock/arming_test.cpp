// A reset or a bypass is armed with a token and confirmed with it: how long, how often, and how
// long after wrong ones nobody is let in.
#include "core/interlock/arming.hpp"

#include <gtest/gtest.h>

namespace tidewright::interlock {
namespace {

using namespace std::chrono_literals;
using room::RuleId;

const Instant noon{1000h};

struct Arming : testing::Test {
  Ask with(std::uint32_t token, RuleId alarm = RuleId::leak) const {
    return {.kind = AskKind::confirm, .alarm = alarm, .token = token};
  }
  Why arm_at(Instant now, std::uint32_t token = 4711) {
    return arm({.kind = AskKind::reset, .alarm = RuleId::leak, .token = token}, Why::armed, now,
               armed)
        .why;
  }
  Why confirm_at(Instant now, std::uint32_t token) {
    const auto wrong = wrong_confirmation(with(token), now, armed);
    return wrong ? wrong->why : Why::done;
  }
  state::Armed armed;
};

TEST_F(Arming, HoldsForItsTimeToTheMillisecond) {
  EXPECT_EQ(arm_at(noon), Why::armed);
  EXPECT_TRUE(reset_is_armed(armed, RuleId::leak, noon + armed_for));
  EXPECT_FALSE(reset_is_armed(armed, RuleId::leak, noon + armed_for + 1ms));
  EXPECT_FALSE(reset_is_armed(armed, RuleId::frost, noon));
  EXPECT_EQ(confirm_at(noon + armed_for, 4711), Why::done);
  EXPECT_EQ(confirm_at(noon + armed_for + 1ms, 4711), Why::armed_too_long_ago);
}

TEST_F(Arming, IsOfOneAlarmAlone) {
  arm_at(noon);
  const auto wrong = wrong_confirmation(with(4711, RuleId::frost), noon, armed);
  ASSERT_TRUE(wrong);
  EXPECT_EQ(wrong->why, Why::armed_too_long_ago);
  armed.cause = room::CauseId::frost;
  EXPECT_FALSE(reset_is_armed(armed, RuleId::leak, noon)) << "that is a bypass";
}

TEST_F(Arming, TheThirdWrongTokenLocksForAMinuteFromThen) {
  arm_at(noon);
  EXPECT_EQ(confirm_at(noon + 1s, 1), Why::wrong_token);
  EXPECT_EQ(confirm_at(noon + 2s, 1), Why::wrong_token);
  EXPECT_TRUE(armed.armed);
  const Instant third = noon + 25s;
  EXPECT_EQ(confirm_at(third, 1), Why::wrong_token);
  EXPECT_FALSE(armed.armed);
  EXPECT_EQ(confirm_at(third, 4711), Why::armed_too_long_ago) << "the right one comes too late";
  EXPECT_EQ(arm_at(third + 60s - 1ms), Why::too_many_tries);
  EXPECT_EQ(arm_at(third + 60s), Why::armed);
  EXPECT_EQ(armed.wrong_tries, 0);
}

TEST_F(Arming, AskingAnewGivesANewTokenButNoNewTries) {
  arm_at(noon);
  confirm_at(noon, 1);
  confirm_at(noon, 1);
  arm_at(noon + 1s, 4712);
  EXPECT_EQ(armed.token, 4712u);
  EXPECT_EQ(armed.at, noon + 1s);
  confirm_at(noon + 1s, 1);
  EXPECT_FALSE(armed.armed);
}

TEST_F(Arming, TheRightTokenOrAMinuteGivesNewTries) {
  arm_at(noon);
  confirm_at(noon, 1);
  EXPECT_EQ(confirm_at(noon, 4711), Why::done);
  armed.wrong_tries = 3;
  armed.at = noon;
  EXPECT_EQ(arm_at(noon + 60s), Why::armed);
  EXPECT_EQ(armed.wrong_tries, 0);
}

}  // namespace
}  // namespace tidewright::interlock
