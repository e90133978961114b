#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Minimal;
using support::Stage;

class Signals : public testing::Test {
 protected:
  void SetUp() override {
    stage.happen(Started{.clean = true});
    stage.happen(Link{.up = true});
  }
  const state::Signal& floor() const { return stage.signal(Minimal::floor); }
  const state::Signal& level() const { return stage.signal(Minimal::level); }
  Stage stage;
};

TEST_F(Signals, RetainedDryProvesNothing) {
  stage.says(Minimal::floor, 0, Arrival::retained);
  EXPECT_NE(floor().quality, Quality::good);
  EXPECT_FALSE(floor().seen);
}

TEST_F(Signals, DatedDryProvesNothingEither) {
  stage.happen(Reading{Minimal::floor, 0, Arrival::dated, stage.now});
  EXPECT_NE(floor().quality, Quality::good);
}

TEST_F(Signals, RetainedWetIsDangerAtOnce) {
  stage.says(Minimal::floor, 1, Arrival::retained);
  EXPECT_EQ(floor().value, 1);
  EXPECT_EQ(floor().quality, Quality::uncertain);
  EXPECT_TRUE(stage.state.latches[room::RuleId::leak].set);
}

TEST_F(Signals, RetainedLevelIsShownButNotBelieved) {
  stage.says(Minimal::level, 90, Arrival::retained);
  EXPECT_EQ(level().value, 90);
  EXPECT_EQ(level().quality, Quality::uncertain);
}

TEST_F(Signals, DatedLevelCountsInsideItsWindowOnly) {
  stage.happen(Reading{Minimal::level, 90, Arrival::dated, stage.now - 4min});
  EXPECT_NE(level().quality, Quality::good);
  stage.happen(Reading{Minimal::level, 91, Arrival::dated, stage.now - 1min});
  EXPECT_EQ(level().quality, Quality::good);
  EXPECT_EQ(level().received, stage.now - 1min);
}

TEST_F(Signals, OlderDatedReadingChangesNothing) {
  stage.happen(Reading{Minimal::level, 91, Arrival::dated, stage.now - 1min});
  stage.happen(Reading{Minimal::level, 60, Arrival::dated, stage.now - 2min});
  EXPECT_EQ(level().value, 91);
}

TEST_F(Signals, LiveReadingsThatOvertookEachOtherAreOrderedByTheirOwnTime) {
  stage.happen(Reading{Minimal::level, 91, Arrival::live, stage.now - 1s});
  stage.happen(Reading{Minimal::level, 60, Arrival::live, stage.now - 2s});
  stage.happen(Reading{Minimal::level, 61, Arrival::live, stage.now - 1s});
  EXPECT_EQ(level().value, 91);
  stage.happen(Reading{Minimal::floor, 0, Arrival::live, stage.now - 1s});
  stage.happen(Reading{Minimal::floor, 1, Arrival::live, stage.now - 2s});
  EXPECT_EQ(floor().value, 1) << "danger counts whenever it comes";
}

TEST_F(Signals, SilenceOfThreeReportsIsStale) {
  stage.says(Minimal::level, 90);
  stage.wait_without(Minimal::level, 179s);
  EXPECT_EQ(level().quality, Quality::good);
  stage.wait_without(Minimal::level, 1s);
  EXPECT_EQ(level().quality, Quality::bad);
  EXPECT_EQ(level().why, Why::stale);
}

TEST_F(Signals, WhatNeverSpeaksIsLostAfterItsPatience) {
  stage.wait(179s);
  EXPECT_EQ(level().why, Why::awaiting_after_link);
  stage.wait(1s);
  EXPECT_EQ(level().why, Why::never_seen);
}

TEST_F(Signals, OneRefusalIsCountedTheSecondCostsTheQuality) {
  stage.says(Minimal::level, 90);
  stage.happen(Refusal{Minimal::level});
  EXPECT_EQ(level().refused, 1u);
  EXPECT_EQ(level().quality, Quality::good);
  stage.happen(Refusal{Minimal::level});
  EXPECT_EQ(level().quality, Quality::bad);
  EXPECT_EQ(level().why, Why::not_a_reading);
  stage.says(Minimal::level, 90);
  EXPECT_EQ(level().quality, Quality::good);
}

TEST_F(Signals, AGoodWordBetweenTwoRefusalsForgivesTheFirst) {
  stage.says(Minimal::level, 90);
  stage.happen(Refusal{Minimal::level});
  stage.says(Minimal::level, 90);
  EXPECT_EQ(level().refused_in_a_row, 0);
  stage.happen(Refusal{Minimal::level});
  EXPECT_EQ(level().quality, Quality::good);
  EXPECT_EQ(level().refused, 2u) << "both are counted";
}

TEST_F(Signals, OutsideTheGrossRangeIsNoReading) {
  stage.says(Minimal::level, 90);
  stage.says(Minimal::level, 4000);
  EXPECT_EQ(level().value, 90);
  EXPECT_EQ(level().refused, 1u);
}

TEST_F(Signals, OutsideThePlausibleRangeIsDoubtful) {
  stage.room.instruments[Minimal::level].plausible_high = 210;
  stage.says(Minimal::level, 215);
  EXPECT_EQ(level().quality, Quality::uncertain);
  EXPECT_EQ(level().status, DeviceStatus::out_of_specification);
}

TEST_F(Signals, ALeapIsPassedOverUnlessItIsSeenAgain) {
  stage.room.instruments[Minimal::level].per_second_max = 0.1;
  stage.says(Minimal::level, 90);
  stage.wait_without(Minimal::level, 60s);
  stage.says(Minimal::level, 150);
  EXPECT_EQ(level().value, 90);
  stage.says(Minimal::level, 150);
  EXPECT_EQ(level().value, 150);
  EXPECT_EQ(level().quality, Quality::good);
}

TEST_F(Signals, AfterALinkLossNothingIsFresh) {
  stage.says(Minimal::level, 90);
  stage.happen(Link{.up = false});
  EXPECT_EQ(level().quality, Quality::bad);
  stage.happen(Link{.up = true});
  EXPECT_EQ(level().why, Why::awaiting_after_link);
  stage.says(Minimal::level, 90);
  EXPECT_EQ(level().quality, Quality::good);
}

// Three reports of a minute each, from the moment at which the line is back.
TEST_F(Signals, AfterALongLinkLossTheWaitBeginsAnew) {
  stage.says(Minimal::level, 90);
  stage.happen(Link{.up = false});
  stage.wait_without(Minimal::level, 30min);
  stage.happen(Link{.up = true});
  stage.wait_without(Minimal::level, 179s);
  EXPECT_EQ(level().why, Why::awaiting_after_link);
  stage.wait_without(Minimal::level, 1s);
  EXPECT_NE(level().why, Why::awaiting_after_link);
}

// It was said to be gone, and to be there again: what it had to tell, it would have told.
TEST_F(Signals, WhatSpeaksOnChangeIsBelievedAgainWhenItIsThereAgain) {
  stage.room.instruments[Minimal::floor].on_change = true;
  stage.room.instruments[Minimal::floor].has_availability = true;
  stage.says(Minimal::floor, 0);
  ASSERT_EQ(floor().quality, Quality::good);
  stage.happen(Availability{Minimal::floor, false});
  EXPECT_EQ(floor().why, Why::said_unavailable);
  stage.happen(Availability{Minimal::floor, true});
  EXPECT_EQ(floor().quality, Quality::good);
}

TEST_F(Signals, ASensorThatDiesWetStaysWet) {
  stage.says(Minimal::floor, 1);
  stage.wait_without(Minimal::floor, 10min);
  EXPECT_EQ(floor().quality, Quality::bad);
  EXPECT_EQ(floor().value, 1);
}

class OnChange : public Signals {
 protected:
  void SetUp() override {
    auto& sensor = stage.room.instruments[Minimal::floor];
    sensor.on_change = true;
    sensor.has_availability = true;
    sensor.reports_every = 25h;
    Signals::SetUp();
  }
};

TEST_F(OnChange, StaysGoodForItsCheckIn) {
  stage.says(Minimal::floor, 0);
  stage.wait(24h);
  EXPECT_EQ(floor().quality, Quality::good);
  stage.wait(1h);
  EXPECT_EQ(floor().why, Why::stale);
}

TEST_F(OnChange, OutlivesARestartWhenItsAvailabilityIsBack) {
  stage.says(Minimal::floor, 0);
  stage.happen(Started{.clean = true});
  stage.happen(Link{.up = true});
  EXPECT_NE(floor().quality, Quality::good);
  stage.happen(Availability{Minimal::floor, true});
  EXPECT_EQ(floor().quality, Quality::good);
  EXPECT_EQ(floor().value, 0);
}

// It may have said "wet" to nobody, and would not say it again before its next check-in.
TEST_F(OnChange, DoesNotOutliveACrash) {
  stage.says(Minimal::floor, 0);
  stage.happen(Started{.clean = false});
  stage.happen(Link{.up = true});
  stage.happen(Availability{Minimal::floor, true});
  EXPECT_NE(floor().quality, Quality::good);
  stage.says(Minimal::floor, 0);
  EXPECT_EQ(floor().quality, Quality::good);
}

TEST_F(OnChange, DoesNotOutliveALongSilenceOfTheLine) {
  for (const auto& [down, good] : {std::pair{4min, true}, {6min, false}}) {
    stage.says(Minimal::floor, 0);
    stage.happen(Link{.up = false});
    stage.wait(down);
    stage.happen(Link{.up = true});
    stage.happen(Availability{Minimal::floor, true});
    EXPECT_EQ(floor().quality == Quality::good, good);
  }
}

TEST_F(OnChange, ItsDangerIsBelievedOverACrash) {
  stage.says(Minimal::floor, 1);
  stage.happen(Started{.clean = false});
  stage.happen(Link{.up = true});
  stage.happen(Availability{Minimal::floor, true});
  EXPECT_EQ(floor().value, 1);
  EXPECT_EQ(floor().quality, Quality::uncertain);
}

TEST_F(OnChange, DoesNotOutliveALongAbsence) {
  stage.says(Minimal::floor, 0);
  stage.happen(Started{.clean = true, .away = 6min});
  stage.happen(Link{.up = true});
  stage.happen(Availability{Minimal::floor, true});
  EXPECT_NE(floor().quality, Quality::good);
}

TEST_F(OnChange, OfflineIsBadAtOnce) {
  stage.says(Minimal::floor, 0);
  stage.happen(Availability{Minimal::floor, false});
  EXPECT_EQ(floor().quality, Quality::bad);
  EXPECT_EQ(floor().why, Why::said_unavailable);
}

// Danger is believed at any quality, safety at good only: a late "dry" of a sensor that is gone
// would stand until its next check-in. Source: the project's asymmetry rule.
TEST_F(OnChange, ALateWordOfOneThatIsGoneProvesNothing) {
  stage.says(Minimal::floor, 0);
  stage.happen(Availability{Minimal::floor, false});
  stage.says(Minimal::floor, 0);
  EXPECT_EQ(floor().quality, Quality::bad);
  EXPECT_EQ(floor().why, Why::said_unavailable);
  stage.says(Minimal::floor, 1);
  EXPECT_EQ(floor().value, 1);
  EXPECT_TRUE(stage.state.latches[room::RuleId::leak].set);
}

TEST_F(OnChange, AvailabilityAloneProvesNothing) {
  stage.happen(Availability{Minimal::floor, true});
  EXPECT_NE(floor().quality, Quality::good);
}

}  // namespace
}  // namespace tidewright
