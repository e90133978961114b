// Every announcement is numbered once, in its order, and remembered with what it was.
#include "core/alarm/notices.hpp"

#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::RuleId;

TEST(Notices, AreNumberedInTheOrderOfTheAnnouncements) {
  state::Notices notices;
  Effects effects;
  effects.push(Announcement{RuleId::leak, 4, Announced::raised, {Why::wet, 0, {}}});
  effects.push(Persist{});
  effects.push(Announcement{RuleId::frost, 2, Announced::cleared, {}});
  const Instant now{std::chrono::hours{10}};
  alarm::enter(effects, now, notices);
  EXPECT_EQ(notices.last, 2u);
  EXPECT_EQ(notices.items[1].number, 1u);
  EXPECT_EQ(notices.items[1].alarm, RuleId::leak);
  EXPECT_EQ(notices.items[1].occurrence, 4u);
  EXPECT_EQ(notices.items[1].why.why, Why::wet);
  EXPECT_EQ(notices.items[1].at, now);
  EXPECT_EQ(notices.items[2].event, Announced::cleared);

  for (int i = 0; i < 20; ++i) alarm::enter(effects, now, notices);
  EXPECT_EQ(notices.last, 42u);
  EXPECT_EQ(notices.items[42 % state::notices_kept].number, 42u);
  EXPECT_EQ(notices.items[43 % state::notices_kept].number, 43u - state::notices_kept)
      << "the oldest that is still there";
}

TEST(Notices, AStepThatAnnouncesRemembersIt) {
  support::Stage stage;
  stage.begin();
  stage.wait(5min);
  stage.says(support::floor, 1);
  ASSERT_FALSE(stage.announcements.empty());
  const state::Notices& notices = stage.state.notices;
  EXPECT_EQ(notices.last, stage.announcements.size());
  const state::Notice& last = notices.items[notices.last % state::notices_kept];
  EXPECT_EQ(last.alarm, stage.announcements.back().alarm);
  EXPECT_EQ(last.occurrence, stage.announcements.back().occurrence);
}

}  // namespace
}  // namespace tidewright
