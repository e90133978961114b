// The real daemon at a real broker: from a wet floor to a stopped pump, and everything that may
// happen to the line between them.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/mqtt_client.hpp"
#include "tests/support/proxy.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;

const std::string minimal = source_file("config/minimal.toml");
const std::string leak = "home/waterroom/leak";
const std::string set = "home/waterroom/booster/set";
const std::string online = "tidewright/online";

std::string uri(int port) { return "mqtt://127.0.0.1:" + std::to_string(port); }

TEST(Daemon, AWetFloorIsAnsweredWithOffAndTold) {
  Broker broker;
  MqttClient home(broker.port(), "home");
  home.subscribe("#");
  DaemonProcess daemon(minimal, broker.uri());
  ASSERT_TRUE(home.await(online, "online", 20s));
  home.publish(leak, "wet");
  ASSERT_TRUE(home.await(set, "OFF", 5s));
  const auto told = home.await_topic("tidewright/waterroom/announcement", 5s);
  ASSERT_TRUE(told);
  EXPECT_FALSE(told->retained);
  EXPECT_NE(told->payload.find("\"leak\""), std::string::npos);
  // The state may have been published before the announcement, which waits for the disk.
  EXPECT_TRUE(eventually(5s, [&] {
    home.next(10ms);
    return std::any_of(home.seen().begin(), home.seen().end(), [](const Message& message) {
      return message.topic == "tidewright/waterroom/value/alarm/leak/latched" &&
             message.payload == "true";
    });
  }));
}

TEST(Daemon, ATermSignalLeavesEverythingOffWithinTwoSeconds) {
  Broker broker;
  MqttClient home(broker.port(), "home");
  home.subscribe(set);
  home.subscribe(online);
  DaemonProcess daemon(minimal, broker.uri());
  ASSERT_TRUE(home.await(online, "online", 20s));
  EXPECT_EQ(daemon.terminate(2s), 0);
  EXPECT_TRUE(home.await(set, "OFF", 1s));
  EXPECT_TRUE(home.await(online, "offline", 1s));
}

TEST(Daemon, AKillIsToldByItsWill) {
  Broker broker;
  MqttClient home(broker.port(), "home");
  home.subscribe(online);
  DaemonProcess daemon(minimal, broker.uri());
  ASSERT_TRUE(home.await(online, "online", 20s));
  const auto killed = std::chrono::steady_clock::now();
  daemon.kill();
  ASSERT_TRUE(home.await(online, "offline", 10s));
  // The will waits 3 s, so that a short gap is not told (mosquitto looks once a second).
  EXPECT_GT(std::chrono::steady_clock::now() - killed, 1s);
}

TEST(Daemon, ABrokerThatForgotEverythingIsToldEverythingWithinTenSeconds) {
  Broker broker;
  DaemonProcess daemon(minimal, broker.uri());
  std::vector<std::string> before;
  {
    MqttClient home(broker.port(), "home");
    home.subscribe("tidewright/#");
    ASSERT_TRUE(home.await_topic("tidewright/waterroom/ledger", 20s));
    while (const auto more = home.next(1s)) {
    }
    for (const Message& message : home.seen()) before.push_back(message.topic);
  }
  broker.kill();
  broker.start();
  MqttClient home(broker.port(), "home");
  home.subscribe("tidewright/#");
  const auto all_again = [&] {
    home.next(20ms);
    return std::all_of(before.begin(), before.end(), [&](const std::string& topic) {
      return std::any_of(home.seen().begin(), home.seen().end(),
                         [&](const Message& message) { return message.topic == topic; });
    });
  };
  EXPECT_GT(before.size(), 50u);
  EXPECT_TRUE(eventually(10s, all_again));
}

TEST(Daemon, WaitsForABrokerThatIsNotThereYet) {
  Broker broker;
  broker.stop();
  DaemonProcess daemon(minimal, broker.uri());
  ASSERT_TRUE(daemon.logged("cannot be reached", 10s));
  EXPECT_TRUE(daemon.process().running());
  broker.start();
  MqttClient home(broker.port(), "home");
  home.subscribe(online);
  EXPECT_TRUE(home.await(online, "online", 20s));
}

TEST(Daemon, StopsWithinTwoSecondsWithoutABroker) {
  DaemonProcess daemon(minimal, uri(free_port()));
  ASSERT_TRUE(daemon.logged("cannot be reached", 10s));
  EXPECT_EQ(daemon.terminate(2s), 0);
}

TEST(Daemon, TheSecondOfANameStandsBackAndTakesOverOnlyWhenTheFirstIsGone) {
  Broker broker;
  MqttClient home(broker.port(), "home");
  home.subscribe(set);
  home.subscribe(online);
  DaemonProcess first(minimal, broker.uri());
  ASSERT_TRUE(home.await(online, "online", 20s));
  DaemonProcess second(minimal, broker.uri());
  ASSERT_TRUE(second.logged("stands back", 20s));
  home.publish(leak, "wet");
  ASSERT_TRUE(home.await(set, "OFF", 5s));
  EXPECT_EQ(first.log().find("is lost"), std::string::npos);
  EXPECT_EQ(second.log().find("Connected"), std::string::npos);
  EXPECT_EQ(second.log().find("Water on the floor"), std::string::npos);
  first.terminate();
  EXPECT_TRUE(second.logged("Connected", 40s));
}

TEST(Daemon, AHalfOpenLinkIsFoundAndTheRoomIsHeardAgain) {
  Broker broker;
  Proxy proxy(broker.port());
  MqttClient home(broker.port(), "home");
  home.subscribe(set);
  DaemonProcess daemon(minimal, uri(proxy.port()));
  ASSERT_TRUE(home.await(set, "OFF", 20s));  // said on every connect
  EXPECT_TRUE(eventually(5s, [&] { return proxy.connections() >= 3; }));
  home.next(600ms);  // a heartbeat or two comes back
  proxy.cut_silently();
  ASSERT_TRUE(daemon.logged("silent for 2.5 s", 10s));
  ASSERT_TRUE(home.await(set, "OFF", 10s));
  home.publish(leak, "wet");
  EXPECT_TRUE(home.await(set, "OFF", 5s));
}

TEST(Daemon, WorksOverMqtt311) {
  Broker broker;
  Proxy proxy(broker.port());
  proxy.refuse_version_5();
  MqttClient home(broker.port(), "home", 4);
  home.subscribe("#");
  DaemonProcess daemon(minimal, uri(proxy.port()));
  ASSERT_TRUE(home.await(online, "online", 20s));
  home.publish(leak, "wet");
  EXPECT_TRUE(home.await(set, "OFF", 5s));
  EXPECT_EQ(daemon.terminate(2s), 0);
}

TEST(Daemon, AnswersAnAskOnItsResponseTopic) {
  Broker broker;
  MqttClient home(broker.port(), "home");
  home.subscribe("phone/answer");
  home.subscribe("tidewright/#");
  DaemonProcess daemon(minimal, broker.uri());
  ASSERT_TRUE(home.await_topic("tidewright/waterroom/ledger", 20s));
  Message ask;
  ask.topic = "tidewright/waterroom/ask";
  ask.payload = R"({"ask": "acknowledge", "alarm": "leak", "who": "ann"})";
  ask.qos = 1;
  ask.response_topic = "phone/answer";
  ask.correlation = "42";
  home.publish(ask);
  const auto answer = home.await_topic("phone/answer", 5s);
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->correlation, "42");
  EXPECT_FALSE(answer->retained);
}

}  // namespace
}  // namespace tidewright::support
