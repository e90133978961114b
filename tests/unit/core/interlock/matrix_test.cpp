// What stops a fill, and how it goes on afterwards. Every cell: cause_and_effect_test.
#include "core/interlock/matrix.hpp"

#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::Minimal;
using support::Stage;

// A fill under way in the largest room, and what stops it.
class MatrixInTheRoom : public testing::Test {
 protected:
  MatrixInTheRoom() : stage(support::full_room()) {}
  void SetUp() override {
    stage.begin();
    stage.wait(2min);
    ASSERT_TRUE(stage.is_on(0));
    ASSERT_TRUE(stage.is_on(1));
  }
  room::InstrumentIndex power() const {
    return *room::find(stage.room, room::Quantity::power, room::ActuatorIndex{0});
  }
  room::InstrumentIndex at(room::Quantity quantity, room::Place place) const {
    return *room::find(stage.room, quantity, place);
  }
  void expect_off(bool latched) {
    EXPECT_FALSE(stage.is_on(0));
    EXPECT_FALSE(stage.is_on(1));
    bool any = false;
    for (const auto& latch : stage.state.latches.items) any = any || latch.set;
    EXPECT_EQ(any, latched);
  }
  Stage stage;
};

TEST_F(MatrixInTheRoom, AnyOneLeakSensor) {
  stage.says(10, 1);  // the second one
  expect_off(true);
}

TEST_F(MatrixInTheRoom, HighHighAfterOneSecond) {
  stage.says(at(room::Quantity::float_switch, room::Place::vat_high_high), 1);
  stage.wait(1s);
  expect_off(true);
}

TEST_F(MatrixInTheRoom, HighHighSilent) {
  stage.wait_without(at(room::Quantity::float_switch, room::Place::vat_high_high), 3min);
  expect_off(false);
}

TEST_F(MatrixInTheRoom, LeakSensorSilent) {
  stage.wait_without(Minimal::floor, 3min);
  expect_off(false);
}

TEST_F(MatrixInTheRoom, GaugeSilentThenBackBySelf) {
  stage.wait_without(Minimal::level, 3min);
  expect_off(false);
  stage.says(Minimal::level, 62);
  stage.wait(2min);
  EXPECT_FALSE(stage.is_on(0));
  stage.wait(2min);
  EXPECT_TRUE(stage.is_on(0));
}

TEST_F(MatrixInTheRoom, GaugeLostThreeTimesInADay) {
  for (int loss = 1; loss <= 3; ++loss) {
    ASSERT_TRUE(stage.is_on(0)) << loss;
    stage.wait_without(Minimal::level, 4min);
    expect_off(loss == 3);
    stage.says(Minimal::level, 62);
    stage.wait(10min);
  }
}

TEST_F(MatrixInTheRoom, LevelAtStop) {
  stage.says(Minimal::level, 180);
  expect_off(false);
  EXPECT_EQ(stage.state.make_water.demand, state::Demand::none);
}

TEST_F(MatrixInTheRoom, FloatSwitchFull) {
  stage.says(at(room::Quantity::float_switch, room::Place::vat), 1);
  expect_off(false);
}

TEST_F(MatrixInTheRoom, FlatLevel) {
  // 2 L a step at half of 280 L/day at 20 degrees (factor 0.8412, see membrane_test): 24.5 min a
  // step, three of them 73 min.
  stage.wait(73min);
  EXPECT_TRUE(stage.is_on(0));
  stage.wait(2min);
  expect_off(false);
}

TEST_F(MatrixInTheRoom, NoPowerFarFromStop) {
  stage.watts_when_on = 0;
  stage.says(power(), 0);
  stage.wait(2min);
  expect_off(false);
}

TEST_F(MatrixInTheRoom, NoPowerNearStopIsFull) {
  stage.watts_when_on = 0;
  stage.says(Minimal::level, 176);
  stage.says(power(), 0);
  stage.wait(1min);
  expect_off(false);
  EXPECT_EQ(stage.state.make_water.why.why, Why::full_by_float);
}

// From 95 % of STOP on [choice].
TEST_F(MatrixInTheRoom, NoPowerIsFullFromNearStopOnExactly) {
  const double near = stage.room.vat->stop_at->value * room::float_closes_from;
  for (const double litres : {near - 1, near}) {
    stage = Stage(support::full_room());
    SetUp();
    stage.watts_when_on = 0;
    stage.says(Minimal::level, litres);
    stage.says(power(), 0);
    stage.wait(1min);
    EXPECT_EQ(stage.state.make_water.why.why == Why::full_by_float, litres >= near) << litres;
  }
}

// A plug whose timer has let go tells its power first; near STOP that is not a full vat.
TEST_F(MatrixInTheRoom, NoPowerNearStopJustBeforeOffIsNotFull) {
  stage.says(Minimal::level, 176);
  stage.says(power(), 0);
  stage.says(Minimal::feedback, 0);
  EXPECT_NE(stage.state.make_water.why.why, Why::full_by_float);
  EXPECT_TRUE(state::asks_for_water(stage.state.make_water.demand));
}

TEST_F(MatrixInTheRoom, NoPowerBeforeTheStartIsNotFull) {
  stage.says(Minimal::level, 176);
  stage.happen(Ask{.kind = AskKind::stop});
  stage.wait(5min);
  stage.watts_when_on = 0;  // said with the relay's word, before the motor turns
  stage.happen(Ask{.kind = AskKind::start});
  ASSERT_TRUE(stage.is_on(0));
  stage.wait_without(power(), 59s);
  EXPECT_TRUE(stage.is_on(0)) << "the plug's next word was lost";
}

TEST_F(MatrixInTheRoom, FrostOnlyInhibits) {
  stage.says(Minimal::warmth, 3);
  stage.wait(5min);
  EXPECT_TRUE(stage.is_on(0));
  stage.happen(Ask{.kind = AskKind::stop});
  stage.happen(Ask{.kind = AskKind::start});
  stage.wait(5min);
  EXPECT_FALSE(stage.is_on(0));
  EXPECT_EQ(stage.state.drives[0].why.why, Why::frost);
}

TEST(MatrixAtStart, NothingStartsForFiveMinutesAfterAnUncleanEnd) {
  Stage stage;
  stage.happen(Started{.clean = false});
  stage.happen(Link{.up = true});
  stage.says(Minimal::floor, 0);
  stage.says(Minimal::level, 60);
  stage.wait(299s);
  EXPECT_FALSE(stage.is_on());
  stage.wait(1s);
  EXPECT_TRUE(stage.is_on());
}

// Invariant 16 of our safety decisions: unreadable records count as a trip, and only a person who
// has seen the floor dry ends one.
TEST(MatrixAtStart, RecordsThatCannotBeReadCountAsALeak) {
  constexpr auto alarm = room::RuleId::records_unreadable;
  Stage stage;
  stage.happen(Started{.clean = false, .readable = false});
  EXPECT_TRUE(stage.state.latches[alarm].set);
  stage.happen(Link{.up = true});
  stage.says(Minimal::level, 60);
  stage.wait_without(Minimal::floor, 6min);
  const auto ask = [&](AskKind kind) {
    stage.happen(Ask{.kind = kind, .ticket = 1, .alarm = alarm, .token = 4711});
    return stage.answers.at(0).why.why;
  };
  EXPECT_EQ(ask(AskKind::reset), Why::still_wet_or_unknown);
  stage.says(Minimal::floor, 0);
  stage.wait(1h);
  EXPECT_FALSE(stage.is_on());
  EXPECT_EQ(ask(AskKind::reset), Why::armed);
  EXPECT_EQ(ask(AskKind::confirm), Why::reset_done);
  stage.wait(1h);
  EXPECT_FALSE(stage.is_on());
  stage.happen(Ask{.kind = AskKind::start});
  stage.wait(3min);
  EXPECT_TRUE(stage.is_on());
}

TEST(MatrixAtStart, NothingStartsBeforeTheLeakSensorWasSeenLive) {
  Stage stage;
  stage.happen(Started{.clean = true});
  stage.happen(Link{.up = true});
  stage.says(Minimal::level, 60);
  stage.wait(150s);
  EXPECT_FALSE(stage.is_on());
  EXPECT_EQ(stage.state.drives[0].why.why, Why::leak_not_seen);
}

TEST(MatrixAtStart, WithoutALeakSensorOnlyAttended) {
  room::Room room = support::minimal_room();
  room.instruments[Minimal::floor].quantity = room::Quantity::dissolved_solids;
  Stage stage(room);
  stage.begin();
  stage.wait(1h);
  EXPECT_FALSE(stage.is_on());
  stage.happen(Ask{.kind = AskKind::start, .lasting = 30min});
  stage.wait(5min);
  EXPECT_TRUE(stage.is_on());
  stage.wait(25min);
  EXPECT_FALSE(stage.is_on());
}

TEST(MatrixAtStart, WithoutALeaseOnlyAttended) {
  Stage stage;
  stage.room.actuators[0].lease_kind = room::LeaseKind::none;
  stage.begin();
  stage.wait(1h);
  EXPECT_FALSE(stage.is_on());
  stage.happen(Ask{.kind = AskKind::start, .lasting = 30min});
  stage.wait(5min);
  EXPECT_TRUE(stage.is_on());
}

}  // namespace
}  // namespace tidewright
