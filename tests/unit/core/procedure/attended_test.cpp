// A person's runs of what does not go with the fill. The limits are our own choice.
#include "core/procedure/attended.hpp"

#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::Role;
using support::Stage;

class Attended : public testing::Test {
 protected:
  Attended() : stage(support::whole_room()) {}
  void SetUp() override {
    stage.begin();
    stage.wait(3min);
  }
  room::ActuatorIndex index(Role role) const { return *room::find(stage.room, role); }
  bool runs(Role role) const { return stage.is_on(index(role)); }
  const Answer& ask(AskKind kind, Role role, Duration lasting = 0s) {
    stage.happen(Ask{.kind = kind, .ticket = 1, .actuator = index(role), .lasting = lasting});
    EXPECT_EQ(stage.answers.size(), 1u);
    return stage.answers.at(0);
  }
  Stage stage;
};

TEST_F(Attended, EndsWithItsMinutes) {
  EXPECT_TRUE(ask(AskKind::start, Role::heater, 10min).done);
  EXPECT_TRUE(runs(Role::heater));
  stage.wait(10min - 1s);
  EXPECT_TRUE(runs(Role::heater));
  stage.wait(1s);
  EXPECT_FALSE(runs(Role::heater));
  EXPECT_EQ(stage.state.drives[index(Role::heater)].why.why, Why::time_is_up);
}

TEST_F(Attended, EndsWithAStop) {
  ask(AskKind::start, Role::mixing_pump, 10min);
  EXPECT_TRUE(ask(AskKind::stop, Role::mixing_pump).done);
  EXPECT_FALSE(runs(Role::mixing_pump));
}

TEST_F(Attended, NeedsMinutesAndNoMoreThanFourHours) {
  EXPECT_EQ(ask(AskKind::start, Role::heater).why.why, Why::needs_minutes);
  const Reason too_long = ask(AskKind::start, Role::heater, 241min).why;
  EXPECT_EQ(too_long.why, Why::value_out_of_range);
  EXPECT_EQ(too_long.numbers, (std::array<float, 3>{241, 1, 240})) << "asked, least, most";
  EXPECT_TRUE(ask(AskKind::start, Role::heater, 240min).done);
}

TEST_F(Attended, WhatGoesWithTheFillIsNotStartedAlone) {
  for (const Role role : {Role::booster_pump, Role::feed_valve, Role::fill_valve}) {
    EXPECT_EQ(ask(AskKind::start, role, 10min).why.why, Why::goes_with_make_water);
    EXPECT_EQ(ask(AskKind::stop, role).why.why, Why::goes_with_make_water);
  }
  EXPECT_TRUE(runs(Role::booster_pump));
}

TEST_F(Attended, StartAndStopOfMakingWaterLeaveItAlone) {
  ask(AskKind::start, Role::heater, 10min);
  stage.happen(Ask{.kind = AskKind::stop, .ticket = 2});
  EXPECT_TRUE(runs(Role::heater));
  EXPECT_FALSE(runs(Role::booster_pump));
}

TEST_F(Attended, ALatchThatHoldsItEndsIt) {
  ask(AskKind::start, Role::transfer_pump, 4h);
  ask(AskKind::start, Role::heater, 4h);
  stage.says(support::floor, 1);
  stage.wait(1min);
  EXPECT_EQ(ask(AskKind::start, Role::transfer_pump, 10min).why.why, Why::held_by_latch);
  EXPECT_TRUE(runs(Role::heater));  // a leak says nothing against it
  EXPECT_LE(stage.state.attended[index(Role::transfer_pump)].until, stage.now);
}

TEST_F(Attended, NeverOutlivesARestart) {
  ask(AskKind::start, Role::heater, 4h);
  stage.happen(Started{.clean = true});
  stage.happen(Link{.up = true});
  stage.says(support::mixing_level, 60);
  stage.wait(10min);
  EXPECT_FALSE(runs(Role::heater));
}

TEST_F(Attended, WithoutAGaugeNoHeaterRuns) {
  room::Room room = support::whole_room();
  room.instruments[support::mixing_level].place = room::Place::vat_high_high;
  Stage bare(std::move(room));
  bare.begin();
  bare.happen(Ask{.kind = AskKind::start, .actuator = index(Role::heater), .lasting = 10min});
  bare.wait(5min);
  EXPECT_FALSE(bare.is_on(index(Role::heater)));
  EXPECT_EQ(bare.state.drives[index(Role::heater)].why.why, Why::no_mixing_level);
}

TEST_F(Attended, OnlyWhatMovesWaterAnswersWet) {
  ask(AskKind::start, Role::mixing_pump, 1h);
  stage.says(support::floor, 1);
  for (const Command& command : stage.commands) {
    EXPECT_TRUE(facts(stage.room.actuators[command.actuator].role).moves_water);
  }
  stage.now += 1s;
  stage.says(support::floor, 1);
  EXPECT_EQ(stage.commands.size(), 6u);  // two pumps and four valves
}

}  // namespace
}  // namespace tidewright
