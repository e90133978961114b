#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using state::Demand;
using support::Minimal;
using support::Stage;

class MakeWater : public testing::Test {
 protected:
  void SetUp() override { stage.begin(); }
  Demand demand() const { return stage.state.make_water.demand; }
  Why why() const { return stage.state.make_water.why.why; }
  Stage stage;
};

TEST_F(MakeWater, BelowStartADemandStands) {
  EXPECT_EQ(demand(), Demand::standing);
  EXPECT_EQ(why(), Why::below_start);
}

TEST_F(MakeWater, TheDemandStandsAboveStartUpToStop) {
  stage.wait(3min);
  const Instant began = stage.state.drives[0].commanded;
  for (const double level : {90.0, 150.0, 179.0}) {
    stage.wait(20min);
    stage.says(Minimal::level, level);
    EXPECT_EQ(demand(), Demand::standing);
    EXPECT_TRUE(stage.is_on());
  }
  const double minutes_on = seconds(stage.now - began) / 60;
  stage.says(Minimal::level, 180);
  EXPECT_EQ(demand(), Demand::none);
  EXPECT_EQ(why(), Why::reached_stop);
  EXPECT_FALSE(stage.is_on());
  const auto& numbers = stage.state.make_water.why.numbers;
  EXPECT_FLOAT_EQ(numbers[0], 180);
  EXPECT_NEAR(numbers[2], minutes_on, 0.1);
  stage.says(Minimal::level, 81);
  EXPECT_EQ(demand(), Demand::none);
  stage.says(Minimal::level, 79);
  EXPECT_EQ(demand(), Demand::standing);
}

TEST_F(MakeWater, ARestartPausesAndGoesOn) {
  stage.wait(3min);
  stage.says(Minimal::level, 120);
  stage.happen(Started{.clean = true});
  stage.happen(Link{.up = true});
  EXPECT_FALSE(stage.is_on());
  stage.says(Minimal::floor, 0);
  stage.says(Minimal::level, 120);
  stage.wait(3min);
  EXPECT_TRUE(stage.is_on());
}

TEST_F(MakeWater, AStopStandsUntilAStart) {
  stage.happen(Ask{.kind = AskKind::stop});
  stage.wait(24h);
  EXPECT_EQ(demand(), Demand::halted);
  EXPECT_FALSE(stage.is_on());
  stage.happen(Ask{.kind = AskKind::start});
  EXPECT_EQ(demand(), Demand::asked);
}

TEST_F(MakeWater, AStopWithMinutesEndsByItself) {
  stage.happen(Ask{.kind = AskKind::stop, .lasting = 8h});
  stage.wait(8h - 1s);
  EXPECT_EQ(demand(), Demand::halted);
  stage.wait(1s);
  EXPECT_EQ(demand(), Demand::standing);
}

TEST_F(MakeWater, ALatchedTripEndsTheDemand) {
  stage.says(Minimal::floor, 1);
  stage.wait(1min);
  EXPECT_EQ(demand(), Demand::halted);
  EXPECT_EQ(why(), Why::held_by_latch);
}

TEST_F(MakeWater, AnAttendedRunEndsWithItsMinutes) {
  stage.says(Minimal::level, 120);
  stage.happen(Ask{.kind = AskKind::stop});
  stage.happen(Ask{.kind = AskKind::start, .lasting = 30min});
  EXPECT_EQ(demand(), Demand::attended);
  stage.wait(29min);
  EXPECT_TRUE(stage.is_on());
  stage.wait(1min);
  EXPECT_EQ(demand(), Demand::none);
  EXPECT_FALSE(stage.is_on());
}

TEST_F(MakeWater, AStartOfAFullVatIsRefused) {
  stage.says(Minimal::level, 185);
  stage.happen(Ask{.kind = AskKind::start, .ticket = 7});
  ASSERT_EQ(stage.answers.size(), 1u);
  EXPECT_FALSE(stage.answers[0].done);
  EXPECT_EQ(stage.answers[0].why.why, Why::reached_stop);
}

TEST_F(MakeWater, AnAttendedRunIsNeverLongerThanFourHours) {
  stage.happen(Ask{.kind = AskKind::start, .ticket = 7, .lasting = 5h});
  EXPECT_EQ(stage.answers.at(0).why.why, Why::value_out_of_range);
}

class ByTheClock : public testing::Test {
 protected:
  ByTheClock() : stage(room_with_float_only()) {}
  static room::Room room_with_float_only() {
    room::Room room = support::minimal_room();
    room.instruments[Minimal::level].quantity = room::Quantity::float_switch;
    room.vat->start_below.reset();
    room.vat->stop_at.reset();
    room.purifier->start_hours = room::Hours{9 * 60, 18 * 60};
    return room;
  }
  // The stage begins at midnight UTC, and this household lives there.
  void SetUp() override {
    stage.begin();
    stage.says(Minimal::level, 0);
  }
  Stage stage;
};

TEST_F(ByTheClock, AFillBeginsInTheHoursAndEndsAtTheFloat) {
  EXPECT_EQ(stage.state.drives[0].why.why, Why::outside_hours);
  stage.wait(8h + 59min);
  EXPECT_FALSE(stage.is_on());
  stage.wait(2min);
  EXPECT_TRUE(stage.is_on());
  stage.wait(10h);  // past the hours: a fill that has begun goes on
  EXPECT_TRUE(stage.is_on());
  stage.says(Minimal::level, 1);
  EXPECT_FALSE(stage.is_on());
}

TEST_F(ByTheClock, TheHoursAreLocalOnes) {
  stage.happen(ClockSet{{.zone = 2h}});
  stage.wait(7h + 2min);
  EXPECT_TRUE(stage.is_on());
}

// The stage begins at midnight.
TEST_F(ByTheClock, HoursMayGoOverMidnightAndBeginToTheMinute) {
  stage.room.purifier->start_hours = room::Hours{22 * 60, 6 * 60};
  stage.wait(3min);
  EXPECT_TRUE(stage.is_on());

  const auto begins = [this](int from, int to, Duration at) {
    stage = Stage(room_with_float_only());
    stage.room.purifier->start_hours = room::Hours{from, to};
    SetUp();
    stage.wait(at);
    return stage.is_on();
  };
  EXPECT_FALSE(begins(22 * 60, 0, 21h + 59min));
  EXPECT_TRUE(begins(22 * 60, 0, 22h + 1min));
  EXPECT_TRUE(begins(60, 120, 1h + 1min));
  EXPECT_FALSE(begins(60, 120, 1h - 1min));
}

TEST_F(ByTheClock, AFloatThatDropsAgainWaitsHalfADay) {
  stage.wait(9h + 2min);
  ASSERT_TRUE(stage.is_on());
  stage.says(Minimal::level, 1);
  stage.says(Minimal::level, 0);
  stage.wait(8h);
  EXPECT_FALSE(stage.is_on());
}

TEST(WithoutAnyLevel, AStartNeedsMinutes) {
  room::Room room = support::minimal_room();
  room.instruments[Minimal::level].quantity = room::Quantity::temperature;
  room.instruments[Minimal::level].place = room::Place::room;
  Stage stage(room);
  stage.begin();
  stage.happen(Ask{.kind = AskKind::start, .ticket = 1});
  EXPECT_EQ(stage.answers.at(0).why.why, Why::needs_minutes);
}

}  // namespace
}  // namespace tidewright
