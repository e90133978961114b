// What the broker still holds from before the daemon's start: it may be old, so it can add danger
// but never safety.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/hand.hpp"

namespace tidewright::support {
namespace {

using testing::HasSubstr;
using testing::Not;

class AtStart : public testing::Test {
 protected:
  void keeps(const std::string& topic, const std::string& payload) {
    hand_.client().publish("home/waterroom/" + topic, payload, true);
  }

  Broker broker_;
  Hand hand_{broker_};
};

TEST_F(AtStart, ARetainedDryProvesNothing) {
  keeps("leak", "dry");
  keeps("vat_level", "30");
  DaemonProcess daemon(source_file("config/minimal.toml"), broker_.uri());
  ASSERT_TRUE(hand_.daemon_is_online()) << daemon.log();
  // All that a fill wants is there, but for a leak sensor that has spoken since.
  ASSERT_TRUE(hand_.says_until("vat_level", "30", "source/pure_level/quality", "good"));
  EXPECT_NE(hand_.shown("source/floor/quality"), "good");
  EXPECT_THAT(hand_.commands(), Not(HasSubstr("ON")));
  EXPECT_THAT(hand_.shown("actuator/booster/why"), HasSubstr("leak sensor"));

  ASSERT_TRUE(hand_.says_until("leak", "dry", "source/floor/quality", "good"));
  // Nothing stands in the way now but the rest that follows the OFF of every new link.
  EXPECT_TRUE(hand_.shows("actuator/booster/why", "the booster pump rests for 2 min"));
}

TEST_F(AtStart, ARetainedWetTrips) {
  keeps("leak", "wet");
  DaemonProcess daemon(source_file("config/minimal.toml"), broker_.uri());
  EXPECT_TRUE(hand_.shows("alarm/leak/latched", "true")) << daemon.log();
  EXPECT_THAT(hand_.commands(), HasSubstr("OFF"));
}

}  // namespace
}  // namespace tidewright::support
