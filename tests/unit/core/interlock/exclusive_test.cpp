// Never two of a pair on. Source of the pairs: the project's safety decisions, "exclusive actuators
// are never both on", and what fills and what empties the same vat.
#include "core/interlock/exclusive.hpp"

#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::Role;
using support::Stage;

class Exclusive : public testing::Test {
 protected:
  Exclusive() : stage(support::whole_room()) {}
  void SetUp() override {
    stage.begin();
    stage.wait(2min);
    ASSERT_TRUE(runs(Role::fill_valve));
  }
  room::ActuatorIndex index(Role role) const { return *room::find(stage.room, role); }
  bool runs(Role role) const { return stage.is_on(index(role)); }
  void start(Role role, Duration lasting) {
    stage.happen(Ask{.kind = AskKind::start, .actuator = index(role), .lasting = lasting});
  }
  Stage stage;
};

TEST_F(Exclusive, TheFillGivesWayAndGoesOnAfterwards) {
  for (const Role role : {Role::divert_valve, Role::flush_valve, Role::transfer_pump}) {
    SCOPED_TRACE(facts(role).name);
    start(role, 10min);
    stage.wait(1min);
    EXPECT_TRUE(runs(role));
    EXPECT_FALSE(runs(Role::fill_valve));
    EXPECT_EQ(stage.state.drives[index(Role::fill_valve)].why.why, Why::excluded);
    stage.wait(15min);
    EXPECT_FALSE(runs(role));
    EXPECT_TRUE(runs(Role::fill_valve));
  }
}

// The order in which commands leave: first OFF, then, when it is confirmed, ON.
TEST_F(Exclusive, TheOtherStartsOnlyWhenItIsOff) {
  stage.plug_obeys = false;
  start(Role::divert_valve, 10min);
  ASSERT_EQ(stage.commands.size(), 1u);
  EXPECT_EQ(stage.commands[0].actuator, index(Role::fill_valve));
  EXPECT_FALSE(stage.commands[0].on);
  stage.wait(5s);
  EXPECT_FALSE(runs(Role::divert_valve));
  stage.says(*room::find(stage.room, room::Quantity::feedback, index(Role::fill_valve)), 0);
  EXPECT_TRUE(runs(Role::divert_valve));
}

TEST_F(Exclusive, AValveThatGivesNoAnswerIsWaitedForAsLongAsItTravels) {
  room::Room room = support::whole_room();
  room.actuators[index(Role::fill_valve)].travel = 15s;
  room.instruments[support::fill_feedback].quantity = room::Quantity::power;
  room.instruments[support::fill_feedback].place = room::Place::product;
  Stage quiet(std::move(room));
  quiet.begin();
  quiet.wait(2min);
  quiet.happen(
      Ask{.kind = AskKind::start, .actuator = index(Role::divert_valve), .lasting = 10min});
  quiet.wait(14s);
  EXPECT_FALSE(quiet.is_on(index(Role::divert_valve)));
  quiet.wait(1s);
  EXPECT_TRUE(quiet.is_on(index(Role::divert_valve)));
}

TEST_F(Exclusive, WhatMayNotRunStopsNothing) {
  stage.says(support::mixing_level, 95);  // above the mixing vat's stop mark
  start(Role::transfer_pump, 10min);
  stage.wait(5min);
  EXPECT_FALSE(runs(Role::transfer_pump));
  EXPECT_TRUE(runs(Role::fill_valve));
}

// However they are asked for and whatever else happens, at no instant are both of a pair on.
TEST_F(Exclusive, NeverBothThroughAnHourOfAsking) {
  const Role roles[] = {Role::transfer_pump, Role::divert_valve, Role::flush_valve};
  for (int minute = 0; minute < 60; ++minute) {
    start(roles[minute % 3], (1 + minute % 4) * 1min);
    for (int tenth = 0; tenth < 6; ++tenth) {
      stage.wait(10s);
      for (const interlock::Exclusive& pair : interlock::exclusives()) {
        EXPECT_FALSE(runs(pair.gives_way) && runs(pair.to))
            << facts(pair.gives_way).name << " and " << facts(pair.to).name;
      }
    }
  }
}

}  // namespace
}  // namespace tidewright
