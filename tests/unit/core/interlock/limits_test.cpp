// Limits of running per run and per day, for every role, across restarts. Source: the project's
// safety decisions, "on-time per run and day is limited, across restarts".
#include <gtest/gtest.h>

#include "tests/support/stage.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::Role;
using support::Stage;

constexpr Role fills[] = {Role::booster_pump, Role::feed_valve, Role::fill_valve};
constexpr Role alone[] = {Role::transfer_pump, Role::mixing_pump, Role::heater, Role::divert_valve,
                          Role::flush_valve};

class Limits : public testing::TestWithParam<Role> {
 protected:
  Limits() : stage(support::whole_room()) {}
  room::Actuator& limited() { return stage.room.actuators[index()]; }
  room::ActuatorIndex index() const { return *room::find(stage.room, GetParam()); }
  bool runs() const { return stage.is_on(index()); }
  void want() {
    if (facts(GetParam()).makes_water) {
      stage.happen(Ask{.kind = AskKind::start});
    } else {
      stage.happen(Ask{.kind = AskKind::stop});
      stage.happen(Ask{.kind = AskKind::start, .actuator = index(), .lasting = 4h});
    }
  }
  void restart() {
    stage.happen(Started{.clean = true});
    stage.happen(Link{.up = true});
    for (std::size_t i = 0; i < stage.room.instruments.size(); ++i) {
      const room::Quantity quantity = stage.room.instruments[i].quantity;
      stage.says(static_cast<room::InstrumentIndex>(i), quantity == room::Quantity::level ? 60
                                                        : quantity == room::Quantity::temperature
                                                            ? 20
                                                            : 0);
    }
  }
  Why why() const { return stage.state.drives[index()].why.why; }
  Stage stage;
};

TEST_P(Limits, ARunEndsAtItsLongestAndTheNextMayBegin) {
  limited().run_longest = 20min;
  stage.begin();
  want();
  stage.wait(3min);
  ASSERT_TRUE(runs());
  stage.wait(18min);
  EXPECT_TRUE(runs());
  stage.wait(1min);
  EXPECT_FALSE(runs());
  // The longest run of what drives a fill is its longest fill, which is tried again after a while.
  bool again = false;
  for (int minute = 0; minute < 45 && !again; ++minute) {
    stage.wait(1min);
    again = runs();
  }
  EXPECT_TRUE(again);
}

TEST_P(Limits, ADaysRunningIsCountedThroughARestart) {
  limited().on_per_day_longest = 30min;
  stage.begin();
  want();
  stage.wait(22min);  // 20 of them on
  restart();
  want();
  stage.wait(11min);  // 9 of them on
  EXPECT_TRUE(runs());
  stage.wait(2min);
  EXPECT_FALSE(runs());
  EXPECT_EQ(why(), Why::day_longest);
  stage.wait(1h);
  EXPECT_FALSE(runs());
}

// 24 h are a whole day: no limit.
TEST(ADayOfRunning, HasNoLimitUnlessTheFileSaysLess) {
  Stage stage(support::whole_room());
  const room::ActuatorIndex pump = *room::find(stage.room, Role::mixing_pump);
  stage.room.actuators[pump].run_longest = 48h;
  ASSERT_EQ(stage.room.actuators[pump].on_per_day_longest, Duration{24h});
  stage.begin();
  for (int hours = 0; hours < 27; hours += 3) {
    stage.happen(Ask{.kind = AskKind::start, .actuator = pump, .lasting = 4h});
    stage.wait(3h);
    ASSERT_TRUE(stage.is_on(pump)) << hours;
  }
}

INSTANTIATE_TEST_SUITE_P(Fill, Limits, testing::ValuesIn(fills),
                         [](const auto& row) { return std::string(facts(row.param).name); });
INSTANTIATE_TEST_SUITE_P(Alone, Limits, testing::ValuesIn(alone),
                         [](const auto& row) { return std::string(facts(row.param).name); });

}  // namespace
}  // namespace tidewright
