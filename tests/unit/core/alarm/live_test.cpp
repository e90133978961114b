// The alarm life cycle row by row. The states and guards are those of an alarm life cycle in the
// sense of ISA-18.2 / IEC 62682 (from memory); times are our own choice.
#include <gtest/gtest.h>

#include "tests/unit/core/alarm/bench.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using alarm::AlarmState;
using room::RuleId;

TEST(AlarmLife, AConditionIsTheNewestOccurrenceAndAnnouncedBehindPersist) {
  AlarmBench bench;
  bench.condition(RuleId::vat_low, true);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::unacknowledged);
  EXPECT_EQ(bench.alarms[RuleId::vat_low].occurrence, 1u);
  ASSERT_EQ(bench.effects.size(), 2u);
  EXPECT_TRUE(std::holds_alternative<Persist>(bench.effects[0]));
  EXPECT_EQ(std::get<Announcement>(bench.effects[1]).event, Announced::raised);
  bench.pass(1s);
  EXPECT_TRUE(bench.effects.empty()) << "a standing alarm is not told twice";
}

TEST(AlarmLife, AcknowledgedThenGoneIsNormal) {
  AlarmBench bench;
  bench.condition(RuleId::vat_low, true);
  EXPECT_EQ(bench.ask(AskKind::acknowledge, RuleId::vat_low).why, Why::done);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::acknowledged);
  bench.condition(RuleId::vat_low, false);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::normal);
  EXPECT_EQ(bench.told(Announced::cleared), 1);
}

TEST(AlarmLife, GoneThenAcknowledgedIsNormal) {
  AlarmBench bench;
  bench.condition(RuleId::vat_low, true);
  bench.condition(RuleId::vat_low, false);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::returned_unacknowledged);
  EXPECT_EQ(bench.ask(AskKind::acknowledge, RuleId::vat_low).why, Why::done);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::normal);
}

TEST(AlarmLife, ALateButtonForAnOlderOccurrenceDoesNothing) {
  AlarmBench bench;
  bench.condition(RuleId::vat_low, true);
  bench.condition(RuleId::vat_low, false);
  bench.condition(RuleId::vat_low, true, 1h);
  const Reason refused = bench.ask(AskKind::acknowledge, RuleId::vat_low, 0s, 1);
  EXPECT_EQ(refused.why, Why::old_occurrence);
  EXPECT_EQ(refused.numbers[0], 2);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::unacknowledged);
  EXPECT_EQ(bench.ask(AskKind::acknowledge, RuleId::vat_low, 0s, 2).why, Why::done);
  EXPECT_EQ(bench.ask(AskKind::acknowledge, RuleId::vat_low).why, Why::nothing_to_acknowledge);
}

TEST(AlarmLife, ALatchOutlivesItsCauseAndAResetAcknowledges) {
  AlarmBench bench;
  bench.latch(RuleId::leak);
  bench.condition(RuleId::leak, true);
  bench.condition(RuleId::leak, false);
  EXPECT_EQ(bench.state(RuleId::leak), AlarmState::latched_unacknowledged);
  EXPECT_EQ(bench.ask(AskKind::acknowledge, RuleId::leak).why, Why::done);
  EXPECT_EQ(bench.state(RuleId::leak), AlarmState::latched_acknowledged);
  bench.condition(RuleId::leak, true);
  EXPECT_EQ(bench.alarms[RuleId::leak].occurrence, 2u) << "wet again is a new occurrence";
  bench.condition(RuleId::leak, false);
  bench.ask(AskKind::confirm, RuleId::leak);
  EXPECT_EQ(bench.state(RuleId::leak), AlarmState::normal);
}

TEST(AlarmLife, UrgentIsRepeatedEveryTenMinutesUntilAcknowledged) {
  AlarmBench bench;
  bench.latch(RuleId::leak);
  bench.condition(RuleId::leak, true);
  bench.pass(9min);
  EXPECT_EQ(bench.told(Announced::reminder), 0);
  EXPECT_EQ(bench.wake.at, bench.circumstances.now + 1min);
  bench.pass(1min);
  bench.condition(RuleId::leak, false);
  bench.pass(10min);
  EXPECT_EQ(bench.told(Announced::reminder), 2) << "also while only the latch stands";
  bench.ask(AskKind::acknowledge, RuleId::leak);
  bench.pass(11h);
  EXPECT_EQ(bench.told(Announced::reminder), 2);
  bench.pass(1h);
  EXPECT_EQ(bench.told(Announced::reminder), 3) << "acknowledged is not done";
  EXPECT_EQ(bench.state(RuleId::leak), AlarmState::latched_unacknowledged);
}

TEST(AlarmLife, ShelvingIsBoundedAndNeverForALeak) {
  AlarmBench bench;
  EXPECT_EQ(bench.ask(AskKind::shelve, RuleId::leak, 10min).why, Why::may_not_be_shelved);
  EXPECT_EQ(bench.ask(AskKind::shelve, RuleId::vat_low, 0s).why, Why::needs_minutes);
  const Reason refused = bench.ask(AskKind::shelve, RuleId::vat_low, 25h);
  EXPECT_EQ(refused.why, Why::shelved_too_long);
  EXPECT_EQ(refused.numbers[0], 24);
  EXPECT_EQ(bench.ask(AskKind::shelve, RuleId::vat_low, 24h).why, Why::done);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::shelved);
  EXPECT_EQ(bench.ask(AskKind::shelve, RuleId::vat_low, 1h).why, Why::already_shelved);
}

TEST(AlarmLife, ShelvingIsBoundedByClass) {
  AlarmBench bench;
  for (const auto& [id, longest] : {std::pair{RuleId::vat_high_high, Duration{4h}},
                                    {RuleId::pump_dry, Duration{24h}},
                                    {RuleId::stock_low, Duration{7 * 24h}}}) {
    EXPECT_EQ(bench.ask(AskKind::shelve, id, longest + 1s).why, Why::shelved_too_long);
    EXPECT_EQ(bench.ask(AskKind::shelve, id, longest).why, Why::done);
  }
}

TEST(AlarmLife, AShelfThatEndsOverAStandingConditionTellsIt) {
  AlarmBench bench;
  bench.ask(AskKind::shelve, RuleId::vat_low, 1h);
  bench.condition(RuleId::vat_low, true);
  EXPECT_TRUE(bench.announced.empty());
  EXPECT_EQ(bench.ask(AskKind::acknowledge, RuleId::vat_low).why, Why::nothing_to_acknowledge);
  bench.pass(1h);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::unacknowledged);
  EXPECT_EQ(bench.told(Announced::raised), 1);
}

TEST(AlarmLife, UnshelvingWithNothingStandingIsNormal) {
  AlarmBench bench;
  bench.condition(RuleId::vat_low, true);
  bench.ask(AskKind::shelve, RuleId::vat_low, 1h);
  bench.condition(RuleId::vat_low, false);
  EXPECT_EQ(bench.ask(AskKind::unshelve, RuleId::vat_low).why, Why::done);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::normal);
  EXPECT_EQ(bench.ask(AskKind::unshelve, RuleId::vat_low).why, Why::not_shelved);
}

TEST(AlarmLife, WhatFollowsFromALostBrokerIsNotToldByItself) {
  AlarmBench bench;
  bench.condition(RuleId::broker_lost, true);
  bench.condition(RuleId::level_lost, true);
  EXPECT_EQ(bench.state(RuleId::level_lost), AlarmState::suppressed);
  EXPECT_EQ(bench.announced.size(), 1u);
  bench.condition(RuleId::broker_lost, false);
  EXPECT_EQ(bench.state(RuleId::level_lost), AlarmState::unacknowledged);
  ASSERT_EQ(bench.announced.size(), 3u) << "and the broker's own end";
  EXPECT_EQ(bench.announced[1].alarm, RuleId::level_lost);
  EXPECT_EQ(bench.announced[1].event, Announced::raised);
}

TEST(AlarmLife, OutOfServiceIsQuietAndNeverForALeak) {
  AlarmBench bench;
  bench.room.rules[RuleId::vat_low].in_service = false;
  bench.room.rules[RuleId::leak].in_service = false;
  bench.condition(RuleId::vat_low, true);
  EXPECT_EQ(bench.state(RuleId::vat_low), AlarmState::out_of_service);
  EXPECT_TRUE(bench.announced.empty());
  bench.condition(RuleId::leak, true);
  EXPECT_EQ(bench.announced.size(), 1u);
}

TEST(AlarmLife, ChatterIsHeldButNeverForAnUrgentAlarm) {
  AlarmBench bench;
  for (int i = 0; i < 9; ++i) {
    bench.condition(RuleId::vat_low, true, 1min);
    bench.condition(RuleId::vat_low, false, 1min);
    bench.condition(RuleId::vat_high_high, true, 1s);
    bench.condition(RuleId::vat_high_high, false, 1s);
  }
  const auto raised = [&](RuleId id) {
    return std::count_if(
        bench.announced.begin(), bench.announced.end(), [&](const Announcement& announcement) {
          return announcement.alarm == id && announcement.event == Announced::raised;
        });
  };
  EXPECT_EQ(raised(RuleId::vat_low), 3) << "the third says how often, the rest are held";
  EXPECT_EQ(raised(RuleId::vat_high_high), 9);
  EXPECT_EQ(bench.alarms[RuleId::vat_low].occurrence, 9u) << "the alarm itself is not held";
  bench.condition(RuleId::vat_low, true, 25h);
  EXPECT_EQ(raised(RuleId::vat_low), 4) << "after a quiet day it speaks again";
}

TEST(AlarmLife, ATripThatWasOnlyAssumedIsTold) {
  AlarmBench bench;
  bench.latch(RuleId::leak);
  bench.latches[RuleId::leak].cause = {Why::wet, 0, {}};
  bench.pass(1s);
  EXPECT_EQ(bench.state(RuleId::leak), AlarmState::latched_unacknowledged);
  EXPECT_EQ(bench.told(Announced::raised), 1);
  bench.ask(AskKind::acknowledge, RuleId::leak);
  EXPECT_EQ(bench.state(RuleId::leak), AlarmState::latched_acknowledged);
}

TEST(AlarmLife, ASecondTripSoonAfterAResetIsTold) {
  // The leak's finding lasts ten minutes longer than the water: a reset may fall into that time.
  AlarmBench bench;
  bench.latch(RuleId::leak);
  bench.condition(RuleId::leak, true);
  bench.ask(AskKind::confirm, RuleId::leak);
  EXPECT_EQ(bench.state(RuleId::leak), AlarmState::acknowledged);
  bench.latch(RuleId::leak);
  bench.pass(1s);
  EXPECT_EQ(bench.state(RuleId::leak), AlarmState::unacknowledged);
  EXPECT_EQ(bench.told(Announced::raised), 2);
  EXPECT_EQ(bench.alarms[RuleId::leak].occurrence, 2u);
}

TEST(AlarmLife, TheEndOfADigestAlarmIsNoNews) {
  AlarmBench bench;
  bench.condition(RuleId::unclean_start, true);
  bench.condition(RuleId::unclean_start, false, 5min);
  ASSERT_EQ(bench.announced.size(), 1u);
  EXPECT_EQ(bench.announced[0].event, Announced::raised);
}

TEST(AlarmLife, ATestIsAnnouncedAndChangesNothing) {
  AlarmBench bench;
  EXPECT_EQ(bench.ask(AskKind::test, RuleId::leak).why, Why::done);
  EXPECT_EQ(bench.told(Announced::test), 1);
  EXPECT_EQ(bench.state(RuleId::leak), AlarmState::normal);
}

}  // namespace
}  // namespace tidewright
