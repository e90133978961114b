// The safety line against a real broker: what the daemon's loop does with it, without the daemon.
#include "daemon/mqtt/safety_line.hpp"

#include <gtest/gtest.h>
#include <poll.h>

#include <array>
#include <functional>

#include "tests/support/broker.hpp"
#include "tests/support/mqtt_client.hpp"
#include "tests/support/proxy.hpp"

namespace tidewright::mqtt {
namespace {

using support::Broker;
using support::Message;
using support::MqttClient;
using support::Proxy;
using namespace std::chrono_literals;
using Steady = std::chrono::steady_clock;

Access access_to(int port) {
  Access access;
  access.uri = "tcp://127.0.0.1:" + std::to_string(port);
  return access;
}

// Drives a line as the loop does: by its descriptors, with a heartbeat each 250 ms.
class Driver {
 public:
  explicit Driver(int port, const std::string& instance = "here/1",
                  const std::string& base = "tidewright")
      : line({access_to(port), base, instance, "beat", {"room/leak", "room/level"}}) {
    line.open();
  }

  bool until(const std::function<bool()>& done, std::chrono::milliseconds bound) {
    for (const auto end = Steady::now() + bound; Steady::now() < end && !done();) turn();
    return done();
  }

  SafetyLine line;
  std::vector<std::string> heard;  // "topic payload", "(old)" where of unknown age
  std::vector<Delivery> delivered;
  int ups = 0;
  bool standing_back = false;

 private:
  void turn() {
    std::array<pollfd, 2> wait{pollfd{line.handed_over(), POLLIN, 0},
                               pollfd{line.socket(), POLLIN, 0}};
    poll(wait.data(), wait.size(), 10);
    const auto news = line.adopt();
    if (news == SafetyLine::News::up) ++ups;
    if (news == SafetyLine::News::standing_back) standing_back = true;
    Inbound message;
    while (line.receive(message)) {
      heard.push_back(std::string(message.topic()) + " " + std::string(message.payload()) +
                      (message.retained() ? " (old)" : ""));
    }
    while (const auto delivery = line.delivered()) delivered.push_back(*delivery);
    if (Steady::now() < next_beat_) return;
    next_beat_ = Steady::now() + SafetyLine::beat_every;
    line.beat();
  }
  Steady::time_point next_beat_{};
};

bool up(const Driver& driver) { return driver.line.up(); }

TEST(SafetyLine, HearsSensorsAndCommandsPlugs) {
  Broker broker;
  MqttClient room(broker.port(), "room");
  room.publish("room/leak", "dry", true);
  room.subscribe("plug/set");
  Driver driver(broker.port());
  ASSERT_TRUE(driver.until([&] { return driver.heard.size() == 1; }, 10s));
  EXPECT_EQ(driver.heard[0], "room/leak dry (old)");
  EXPECT_TRUE(driver.line.just_subscribed());
  EXPECT_EQ(driver.line.version(), 5);

  room.publish("room/leak", "wet");
  ASSERT_TRUE(driver.until([&] { return driver.heard.size() == 2; }, 5s));
  EXPECT_EQ(driver.heard[1], "room/leak wet");
  driver.line.command(0, false, "plug/set", "OFF", Duration{9'500});
  const auto command = room.await_topic("plug/set", 5s);
  ASSERT_TRUE(command);
  EXPECT_EQ(command->payload, "OFF");
  EXPECT_EQ(command->qos, 1);
  EXPECT_FALSE(command->retained);
  EXPECT_EQ(command->expiry_seconds, 10u);
  ASSERT_TRUE(driver.until([&] { return !driver.delivered.empty(); }, 5s));
  EXPECT_EQ(driver.delivered[0].code, 0);
  EXPECT_EQ(driver.line.undelivered(), 0u);
}

// MQTT 5 section 3.4.2.1: reason code 16, "no matching subscribers".
TEST(SafetyLine, LearnsThatACommandReachesNobody) {
  Broker broker;
  Driver driver(broker.port());
  ASSERT_TRUE(driver.until([&] { return up(driver); }, 10s));
  driver.line.command(1, false, "plug/set", "OFF", Duration{1'000});
  ASSERT_TRUE(driver.until([&] { return !driver.delivered.empty(); }, 5s));
  EXPECT_EQ(driver.delivered[0].code, 16);
  EXPECT_EQ(driver.delivered[0].actuator, 1);
  EXPECT_FALSE(driver.delivered[0].on);
}

TEST(SafetyLine, GoesOnWithMqtt311WhereTheBrokerHasNoMqtt5) {
  Broker broker;
  Proxy proxy(broker.port());
  proxy.refuse_version_5();
  MqttClient room(broker.port(), "room", 4);
  room.subscribe("plug/set");
  Driver driver(proxy.port());
  ASSERT_TRUE(driver.until([&] { return up(driver); }, 10s));
  EXPECT_EQ(driver.line.version(), 4);
  driver.line.command(0, true, "plug/set", "ON", Duration{1'000});
  EXPECT_TRUE(room.await("plug/set", "ON", 5s));
  room.publish("room/level", "41");
  EXPECT_TRUE(driver.until([&] { return !driver.heard.empty(); }, 5s));
}

TEST(SafetyLine, FindsAHalfOpenLinkByItsHeartbeat) {
  Broker broker;
  Proxy proxy(broker.port());
  Driver driver(proxy.port());
  ASSERT_TRUE(driver.until([&] { return up(driver); }, 10s));
  driver.until([] { return false; }, 600ms);  // until heartbeats have come back
  proxy.cut_silently();
  const auto cut = Steady::now();
  ASSERT_TRUE(driver.until([&] { return !up(driver); }, 10s));
  // 2.5 s of silence after the last echo, looked at every 0.25 s.
  EXPECT_LT(Steady::now() - cut, 4s);
  EXPECT_TRUE(driver.until([&] { return driver.ups == 2; }, 10s));
}

TEST(SafetyLine, ComesBackAfterABrokerRestart) {
  Broker broker;
  Driver driver(broker.port());
  ASSERT_TRUE(driver.until([&] { return up(driver); }, 10s));
  broker.kill();
  ASSERT_TRUE(driver.until([&] { return !up(driver); }, 5s));
  broker.start();
  ASSERT_TRUE(driver.until([&] { return up(driver); }, 10s));
  MqttClient room(broker.port(), "room");
  room.publish("room/leak", "wet");
  EXPECT_TRUE(driver.until([&] { return !driver.heard.empty(); }, 5s));
}

TEST(SafetyLine, StandsBackWhileAnotherOfItsNameLives) {
  Broker broker;
  Driver first(broker.port(), "here/1");
  ASSERT_TRUE(first.until([&] { return up(first); }, 10s));
  first.until([] { return false; }, 300ms);
  // One library handle at most in a process: the second here is the first's beat, by hand.
  first.line.close();
  MqttClient beat(broker.port(), "beat");
  Driver second(broker.port(), "there/2");
  ASSERT_TRUE(second.until(
      [&] {
        Message message;
        message.topic = "beat";
        message.payload = "tidewright here/1 7";
        beat.publish(message);
        return second.standing_back || up(second);
      },
      10s));
  EXPECT_TRUE(second.standing_back);
  EXPECT_FALSE(up(second));
}

TEST(SafetyLine, ANeighbourOfAnotherNameIsNoReasonToStandBack) {
  Broker broker;
  MqttClient beat(broker.port(), "beat");
  Driver driver(broker.port());
  ASSERT_TRUE(driver.until(
      [&] {
        Message message;
        message.topic = "beat";
        message.payload = "other-base here/1 7";
        beat.publish(message);
        return driver.standing_back || up(driver);
      },
      10s));
  EXPECT_TRUE(up(driver));
}

}  // namespace
}  // namespace tidewright::mqtt
