// Limits at the very millisecond, and what is remembered of a drive that cannot be reached.
#include <gtest/gtest.h>

#include "core/procedure/attended.hpp"
#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::CauseId;
using support::Minimal;
using support::Stage;

class Edges : public testing::Test {
 protected:
  void SetUp() override {
    stage.begin();
    stage.wait(3min);
    ASSERT_TRUE(stage.is_on());
  }
  Answer ask(Ask what) {
    what.ticket = 1;
    stage.happen(what);
    EXPECT_EQ(stage.answers.size(), 1u);
    return stage.answers.empty() ? Answer{} : stage.answers.front();
  }
  Stage stage;
};

// Source: the project's safety decisions: 4 h at most for a run that a person watches.
TEST_F(Edges, ARunOfExactlyTheLongestTimeIsAllowed) {
  EXPECT_TRUE(ask({.kind = AskKind::start, .lasting = procedure::attended_longest}).done);
  const Answer longer = ask({.kind = AskKind::start, .lasting = procedure::attended_longest + 1ms});
  EXPECT_EQ(longer.why.why, Why::value_out_of_range);
}

TEST_F(Edges, ARefusalTellsWhatIsAllowed) {
  const Reason why = ask({.kind = AskKind::start, .lasting = 300min}).why;
  EXPECT_EQ(why.numbers, (std::array<float, 3>{300, 1, 240})) << "asked, least, most, in minutes";
}

TEST_F(Edges, EveryStartIsCountedOnce) {
  const auto starts = [&] { return stage.state.drives[0].starts; };
  const auto before = starts();
  EXPECT_EQ(before[0], stage.state.drives[0].commanded);
  EXPECT_EQ(before[1], long_ago);
  stage.happen(Ask{.kind = AskKind::stop, .ticket = 1, .lasting = 1min});
  stage.wait(10min);
  ASSERT_TRUE(stage.is_on());
  EXPECT_EQ(starts()[0], stage.state.drives[0].commanded);
  EXPECT_EQ(starts()[1], before[0]);
  EXPECT_EQ(starts()[2], long_ago);
}

TEST_F(Edges, TheShortestTimeIsATimeAndNotForEver) {
  EXPECT_TRUE(ask({.kind = AskKind::stop, .lasting = 1ms}).done);
  EXPECT_EQ(stage.state.make_water.until, stage.now + 1ms);
  ASSERT_TRUE(ask({.kind = AskKind::bypass, .cause = CauseId::frost, .lasting = 1ms}).done);
  EXPECT_EQ(stage.state.bypasses.asked.until, stage.now + 1ms);
}

TEST_F(Edges, AnActuatorThatIsOneTooFarIsNone) {
  const auto beyond = static_cast<room::ActuatorIndex>(stage.room.actuators.size());
  EXPECT_EQ(ask({.kind = AskKind::test_lease, .actuator = beyond}).why.why, Why::no_such_thing);
}

TEST_F(Edges, WithoutALineEverythingIsHeldAndNothingMayStart) {
  stage.happen(Link{.up = false});
  const state::Drive& drive = stage.state.drives[0];
  EXPECT_FALSE(drive.on);
  EXPECT_TRUE(drive.held);
  EXPECT_FALSE(drive.may_start);
  EXPECT_TRUE(drive.wanted);
  EXPECT_EQ(drive.why.why, Why::link_down);
}

TEST(EdgesOfAPlugsOwnTimer, ItsRunEndsWithTheTimerWhateverItSays) {
  room::Room room = support::minimal_room();
  room.actuators[0].lease_kind = room::LeaseKind::plug_fixed;
  room.actuators[0].lease = 30min;
  Stage stage(room);
  stage.plug_has_timer = false;
  stage.begin();
  stage.wait(3min);
  ASSERT_TRUE(stage.is_on());
  stage.wait(stage.state.drives[0].commanded + 30min - 1ms - stage.now);
  EXPECT_TRUE(stage.is_on());
  stage.wait(1ms);
  EXPECT_FALSE(stage.is_on());
}

// Each OFF that is not obeyed is repeated, quickly at first; a new OFF begins with the quick ones.
TEST_F(Edges, ANewOffIsInsistedOnFromTheBeginning) {
  stage.plug_obeys = stage.plug_has_timer = false;
  const auto stop = [&] {
    stage.happen(Ask{.kind = AskKind::stop, .ticket = 1});
    EXPECT_EQ(stage.state.drives[0].resent, 0);
    stage.commands.clear();
    stage.wait(20s);
    return stage.commands.size();
  };
  const std::size_t first = stop();
  EXPECT_GT(first, 0u);
  EXPECT_GT(stage.state.drives[0].resent, 0);
  stage.plug_obeys = true;
  stage.says(Minimal::feedback, 0);
  EXPECT_EQ(stage.state.drives[0].resent, 0) << "it has obeyed";
}

// The rest before the next start is reckoned from here.
TEST_F(Edges, ALineThatBreaksEndsARunAndTouchesNoRest) {
  const auto since = [&] { return stage.state.drives[0].commanded; };
  stage.happen(Link{.up = false});
  EXPECT_EQ(since(), stage.now) << "it ran";
  const Instant ended = stage.now;
  stage.now += 1min;
  stage.happen(Tick{});
  EXPECT_EQ(since(), ended) << "it was off already";
  stage.now += 1min;
  stage.happen(Started{.clean = true, .away = 1min});
  EXPECT_EQ(since(), stage.now) << "nobody knows how long it has been off";
}

TEST_F(Edges, WhatIsWantedIsRemembered) {
  EXPECT_TRUE(stage.state.drives[0].wanted);
  stage.says(Minimal::level, 180);
  EXPECT_FALSE(stage.state.drives[0].wanted);
}

TEST_F(Edges, ALatchKnowsSinceWhen) {
  stage.says(support::floor, 1);
  const state::Latch& latch = stage.state.latches[room::RuleId::leak];
  EXPECT_EQ(latch.since, stage.now);
  const Instant since = stage.now;
  stage.wait(5min);
  EXPECT_EQ(latch.since, since) << "it stands, and is not set anew";
}

TEST_F(Edges, ATripForgivesTheOnsThatWereIgnored) {
  stage.state.drives[0].ignored = 2;
  stage.says(support::floor, 1);
  EXPECT_EQ(stage.state.drives[0].ignored, 0);
}

// Frost forbids starts only; what began under a bypass ends with it at that very instant.
TEST_F(Edges, ABypassThatEndsEndsWhatRunsInItsCause) {
  stage.happen(Ask{.kind = AskKind::stop, .ticket = 1, .lasting = 1min});
  stage.says(Minimal::warmth, 3);
  stage.wait(5min);
  ASSERT_FALSE(stage.is_on());
  for (const AskKind kind : {AskKind::bypass, AskKind::confirm_bypass}) {
    ask({.kind = kind, .cause = CauseId::frost, .lasting = 10min, .token = 7});
  }
  stage.wait(10min - 1ms);
  ASSERT_TRUE(stage.is_on());
  stage.wait(1ms);
  EXPECT_FALSE(stage.is_on());
}

struct TwoVats : testing::Test {
  TwoVats() : stage(support::whole_room()) {
    stage.room.vat->low = Litres{30};
    stage.begin();
    stage.happen(Ask{.kind = AskKind::stop, .ticket = 1});
    stage.wait(3min);
    for (const room::Role role : {room::Role::transfer_pump, room::Role::heater}) {
      stage.happen(
          Ask{.kind = AskKind::start, .ticket = 1, .actuator = index(role), .lasting = 1h});
    }
  }
  room::ActuatorIndex index(room::Role role) const { return *room::find(stage.room, role); }
  bool runs(room::Role role) const { return stage.is_on(index(role)); }
  Stage stage;
};

TEST_F(TwoVats, TheVatThatIsEmptiedEndsTheTransferAlone) {
  ASSERT_TRUE(runs(room::Role::transfer_pump));
  ASSERT_TRUE(runs(room::Role::heater));
  stage.says(Minimal::level, 29);
  EXPECT_FALSE(runs(room::Role::transfer_pump));
  EXPECT_TRUE(runs(room::Role::heater));
}

TEST_F(TwoVats, TheMixingVatThatIsLowEndsTheHeaterAlone) {
  stage.says(support::mixing_level, 19);
  EXPECT_TRUE(runs(room::Role::transfer_pump));
  EXPECT_FALSE(runs(room::Role::heater));
}

// Product over its limit, where the household only wants to be told: the fill valve shuts it out.
struct OverStop : testing::Test {
  void make(room::Room room) {
    room.purifier->on_breakthrough = room::OnBreakthrough::notify;
    stage = Stage(std::move(room));
    stage.begin();
    stage.wait(2min);
    ASSERT_TRUE(stage.is_on());
  }
  void break_through() {
    stage.says(support::product, 5);
    stage.wait(45min);
    ASSERT_TRUE(stage.state.findings[room::RuleId::resin_breakthrough].active);
  }
  room::ActuatorIndex index(room::Role role) const { return *room::find(stage.room, role); }
  Stage stage;
};

TEST_F(OverStop, WithoutAFillValveGoesOnIntoTheVat) {
  make(support::minimal_room());
  break_through();
  EXPECT_TRUE(stage.is_on());
}

TEST_F(OverStop, StopsThePumpWhereNeitherFillNorDivertValveIsOpen) {
  make(support::whole_room());
  break_through();
  EXPECT_FALSE(stage.is_on(index(room::Role::fill_valve)));
  EXPECT_FALSE(stage.is_on());
  EXPECT_EQ(stage.state.drives[0].why.why, Why::product_above_zero);
}

TEST_F(OverStop, LetsThePumpRunAgainWhenTheDivertValveIsOpen) {
  make(support::whole_room());
  break_through();
  stage.happen(Ask{.kind = AskKind::start,
                   .ticket = 1,
                   .actuator = index(room::Role::divert_valve),
                   .lasting = 1h});
  stage.wait(5min);
  ASSERT_TRUE(stage.is_on(index(room::Role::divert_valve)));
  EXPECT_EQ(stage.state.drives[0].why.why, Why::below_start);
  EXPECT_TRUE(stage.is_on());
}

}  // namespace
}  // namespace tidewright
