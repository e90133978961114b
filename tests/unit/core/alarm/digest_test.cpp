// The weekly digest. What is stale is SAFETY's home figure written out: a day for a high alarm, a
// week for a low one; the hours of day are our own choice.
#include <gtest/gtest.h>

#include "tests/unit/core/alarm/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using alarm::AlarmState;
using alarm::Listed;
using room::RuleId;

// The bench begins at hour 1000, which is 16 o'clock of its 41st day.
struct Week : AlarmBench {
  Week() { pass_digest(1s); }
  std::optional<Listed> why(RuleId id) const {
    return alarm::listed(rules::rule(id), alarms[id], latches[id].set, circumstances.now);
  }
};

TEST(Digest, AWeekWithNothingToSayIsSilentAndTheNextOneBegins) {
  Week week;
  week.made = Litres{300};
  EXPECT_FALSE(week.pass_digest(7 * 24h));
  EXPECT_EQ(week.wake.at, week.circumstances.now + 7 * 24h);
  week.made = Litres{410};
  week.condition(RuleId::stock_low, true);
  EXPECT_TRUE(week.pass_digest(7 * 24h));
  EXPECT_EQ(week.digest.made.value, 110) << "of its own week";
  EXPECT_TRUE(std::holds_alternative<Persist>(week.effects[0]));
}

TEST(Digest, IsToldOnceAWeekForAsLongAsSomethingStands) {
  Week week;
  week.condition(RuleId::stock_low, true);
  int told = 0;
  for (int hour = 0; hour < 4 * 7 * 24 + 1; ++hour) told += week.pass_digest(1h) ? 1 : 0;
  EXPECT_EQ(told, 4);
}

TEST(Digest, ComesByDay) {
  for (int zone = -12; zone <= 12; ++zone) {
    AlarmBench bench;
    bench.circumstances.wall.zone = std::chrono::hours{zone};
    bench.pass_digest(1s);
    bench.condition(RuleId::stock_low, true);
    while (!bench.pass_digest(10min)) {
    }
    const auto local = bench.circumstances.now.time_since_epoch() + std::chrono::hours{zone};
    EXPECT_GE(local % 24h, Duration{8h}) << zone;
    EXPECT_LT(local % 24h, Duration{21h}) << zone;
  }
}

TEST(Digest, WaitsForTheLine) {
  Week week;
  week.condition(RuleId::stock_low, true);
  week.circumstances.link_up = false;
  EXPECT_FALSE(week.pass_digest(8 * 24h));
  week.circumstances.link_up = true;
  EXPECT_TRUE(week.pass_digest(1s));
  EXPECT_FALSE(week.pass_digest(1s));
}

TEST(Digest, ListsHighAlarmsAfterADayAndLowOnesAtOnce) {
  Week week;
  week.condition(RuleId::vat_low, true);
  week.condition(RuleId::stock_low, true);
  EXPECT_EQ(week.why(RuleId::vat_low), std::nullopt) << "it is told by itself";
  EXPECT_EQ(week.why(RuleId::stock_low), Listed::standing);
  week.pass(24h);
  EXPECT_EQ(week.why(RuleId::vat_low), Listed::stale);
  EXPECT_EQ(week.why(RuleId::stock_low), Listed::standing);
  week.pass(6 * 24h);
  EXPECT_EQ(week.why(RuleId::stock_low), Listed::stale);
  week.condition(RuleId::stock_low, false);
  EXPECT_EQ(week.why(RuleId::stock_low), std::nullopt) << "gone, if never seen";
}

TEST(Digest, ALatchThatNobodyResetsIsStaleToo) {
  Week week;
  week.latch(RuleId::leak);
  week.condition(RuleId::leak, true);
  week.condition(RuleId::leak, false, 10min);
  week.pass(24h);
  EXPECT_EQ(week.why(RuleId::leak), Listed::stale);
}

TEST(Digest, NamesWhatIsHidden) {
  Week week;
  week.ask(AskKind::shelve, RuleId::stock_low, 7 * 24h);
  EXPECT_EQ(week.why(RuleId::stock_low), Listed::hidden);
  EXPECT_TRUE(week.pass_digest(7 * 24h - 1s)) << "a shelf alone is worth a word";
}

TEST(Digest, WhatTheFileTookOutIsNamedButNoReasonUntilItsCauseStands) {
  AlarmBench bench;
  bench.room.rules[RuleId::vat_low].in_service = false;
  bench.pass_digest(1s);
  EXPECT_FALSE(bench.pass_digest(7 * 24h));
  bench.condition(RuleId::vat_low, true);
  EXPECT_TRUE(bench.pass_digest(7 * 24h));
}

TEST(Digest, IsTheReminderOfLowAlarms) {
  Week week;
  week.condition(RuleId::stock_low, true);
  week.ask(AskKind::acknowledge, RuleId::stock_low);
  const std::size_t told = week.announced.size();
  week.pass_digest(6 * 24h);
  EXPECT_EQ(week.state(RuleId::stock_low), AlarmState::acknowledged);
  week.pass_digest(2 * 24h);
  EXPECT_EQ(week.state(RuleId::stock_low), AlarmState::unacknowledged);
  for (int day = 0; day < 30; ++day) week.pass(24h);
  EXPECT_EQ(week.announced.size(), told) << "no reminder of its own";
}

}  // namespace
}  // namespace tidewright
