// The tests' own broker and client do what the tests below them take for granted.
#include <gtest/gtest.h>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/mqtt_client.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;

TEST(Fixtures, ARetainedMessageIsKeptAndItsFieldsArrive) {
  Broker broker;
  MqttClient giver(broker.port(), "giver");
  Message message{.topic = "a/b", .payload = "wet", .qos = 1, .retained = true};
  message.response_topic = "answer/here";
  message.correlation = "7";
  message.expiry_seconds = 300;
  giver.publish(message);
  MqttClient taker(broker.port(), "taker");
  taker.subscribe("a/#");
  const auto got = taker.await("a/b", "wet", 5s);
  ASSERT_TRUE(got);
  EXPECT_TRUE(got->retained);
  EXPECT_EQ(got->response_topic, "answer/here");
  EXPECT_EQ(got->correlation, "7");
  EXPECT_LE(got->expiry_seconds.value_or(0), 300u);
}

TEST(Fixtures, AKilledBrokerForgetsAndDropsItsClients) {
  Broker broker;
  MqttClient old(broker.port(), "old", 4);
  old.publish("a", "1", true);
  broker.kill();
  EXPECT_FALSE(old.next(1s));
  EXPECT_FALSE(old.connected());
  broker.start();
  MqttClient fresh(broker.port(), "fresh", 4);
  fresh.subscribe("a");
  fresh.publish("a", "2");
  EXPECT_EQ(fresh.next(5s).value_or(Message{}).payload, "2");
}

TEST(Fixtures, AWillIsPublishedForAClientThatIsCutOff) {
  Broker broker;
  MqttClient watcher(broker.port(), "watcher");
  watcher.subscribe("w");
  { MqttClient lost(broker.port(), "lost", 5, Will{"w", "gone"}); }
  EXPECT_TRUE(watcher.await("w", "gone", 5s));
}

// How the sanitizers of g++ 12 begin a report, seen in runs with a planted fault.
TEST(Fixtures, ASanitizersReportInTheDaemonsLogIsSeen) {
  EXPECT_TRUE(has_sanitizer_report("==12==ERROR: AddressSanitizer: heap-use-after-free on"));
  EXPECT_TRUE(has_sanitizer_report("==12==ERROR: LeakSanitizer: detected memory leaks"));
  EXPECT_TRUE(has_sanitizer_report("WARNING: ThreadSanitizer: data race (pid=12)"));
  EXPECT_TRUE(has_sanitizer_report("core/x.cpp:3:5: runtime error: signed integer overflow"));
  EXPECT_FALSE(has_sanitizer_report("2026-02-01T10:00:00Z info: Stopped."));
}

}  // namespace
}  // namespace tidewright::support
