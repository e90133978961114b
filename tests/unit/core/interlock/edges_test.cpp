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

}  // namespace
}  // namespace tidewright
