// The Homie device at a real broker, watched by a controller by the book.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/homie_controller.hpp"
#include "tests/support/mqtt_client.hpp"
#include "tests/support/resident.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;
using testing::ElementsAre;
using testing::IsEmpty;

constexpr Milliseconds patience = 30s;

class HomieTest : public testing::Test {
 protected:
  void SetUp() override { client_.subscribe("homie/5/#"); }
  static std::string household(bool homie) {
    return read_file(source_file("config/minimal.toml")) +
           "\n[hub]\ndiscovery = false\nhomie = " + (homie ? "true" : "false") + "\n";
  }
  template <class Condition>
  bool hears(Condition holds) {
    const auto end = std::chrono::steady_clock::now() + patience;
    while (!holds()) {
      if (std::chrono::steady_clock::now() >= end) return false;
      if (const auto message = client_.next(50ms)) controller_.hear(*message);
    }
    return true;
  }
  bool becomes(const std::string& state) {
    return hears([&] { return controller_.state() == state; });
  }
  std::vector<Message> retained() const {
    MqttClient fresh(broker_.port(), "fresh");
    fresh.subscribe("homie/5/#");
    fresh.publish("homie/5/end", "1");
    fresh.await("homie/5/end", "1", 5s);
    std::vector<Message> kept;
    for (const Message& message : fresh.seen()) {
      if (message.retained) kept.push_back(message);
    }
    return kept;
  }

  TemporaryDirectory directory_;
  Broker broker_;
  std::string file_ = [this] {
    std::string path = directory_.path() + "/household.toml";
    write_file(path, household(true));
    return path;
  }();
  MqttClient client_{broker_.port(), "controller"};
  HomieController controller_;
  DaemonProcess daemon_{file_, broker_.uri()};
};

TEST_F(HomieTest, LivesByTheBook) {
  ASSERT_TRUE(becomes("ready")) << daemon_.log();
  EXPECT_THAT(controller_.story(), ElementsAre("init", "description", "ready"));
  EXPECT_EQ(controller_.value("vat/state"), "resting");
  EXPECT_FALSE(controller_.properties().at("vat/volume-l").settable);
  EXPECT_EQ(controller_.value("vat/volume-l"), "") << "no reading yet";

  const std::string press = controller_.device() + "/request/test-announcement/set";
  client_.publish(press, "press");
  EXPECT_TRUE(hears([&] {
    return controller_.value("announcement/announcement").find("\"event\":\"test\"") !=
           std::string::npos;
  })) << daemon_.log();
  EXPECT_EQ(controller_.value("request/test-announcement"), "press") << "reflected";

  client_.publish("home/waterroom/leak", "wet");
  EXPECT_TRUE(hears([&] { return controller_.alerts().contains("leak"); }));
  EXPECT_TRUE(hears([&] { return controller_.value("alarm-leak/latched") == "true"; }));

  daemon_.kill();
  ASSERT_TRUE(becomes("lost"));
  daemon_.start();
  ASSERT_TRUE(becomes("ready")) << daemon_.log();
  EXPECT_EQ(daemon_.terminate(5s), 0);
  ASSERT_TRUE(becomes("disconnected"));
  EXPECT_THAT(controller_.problems(), IsEmpty());
}

TEST_F(HomieTest, ARetainedSetIsRefusedAndSwitchedOffNothingIsLeft) {
  ASSERT_TRUE(becomes("ready")) << daemon_.log();
  client_.publish(controller_.device() + "/request/stop-make-water/set", "press", true);
  client_.subscribe("tidewright/waterroom/#");
  ASSERT_EQ(daemon_.terminate(5s), 0);
  daemon_.start();
  ASSERT_TRUE(client_.await(
      [](const Message& message) {
        return message.topic == "tidewright/waterroom/answer" &&
               message.payload.find("retain flag") != std::string::npos;
      },
      patience))
      << daemon_.log();
  client_.publish(controller_.device() + "/request/stop-make-water/set", "", true);

  ASSERT_EQ(daemon_.terminate(5s), 0);
  write_file(file_, household(false));
  daemon_.start();
  ASSERT_TRUE(hears([&] { return controller_.story().back() == "removed" && retained().empty(); }))
      << daemon_.log();
  EXPECT_THAT(controller_.problems(), IsEmpty());
}

// A household that wants it pays for a second connection.
TEST_F(HomieTest, TakesOneMebibyteMoreAtMost) {
  ASSERT_TRUE(becomes("ready")) << daemon_.log();
  const long with = resident_kib(daemon_.process().pid());
  ASSERT_EQ(daemon_.terminate(5s), 0);
  write_file(file_, household(false));
  daemon_.start();
  client_.subscribe("tidewright/waterroom/ledger");
  ASSERT_TRUE(hears([&] { return controller_.story().back() == "removed" && retained().empty(); }));
  const long without = resident_kib(daemon_.process().pid());
  RecordProperty("more_kib", static_cast<int>(with - without));
  std::printf("resident: %ld KiB with Homie, %ld KiB without\n", with, without);
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
  constexpr long most_kib = 16 * 1024;  // with the sanitizer's own
#else
  constexpr long most_kib = 1024;
#endif
  EXPECT_LE(with - without, most_kib);
}

}  // namespace
}  // namespace tidewright::support
