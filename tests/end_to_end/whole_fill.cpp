// Whole fills: the pretend water room speaks MQTT like real sensors and plugs, the real daemon runs
// it, and both clocks run forty times faster. What must come to pass stands in stories/.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/mqtt_client.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;

const std::string room_file = source_file("tests/end_to_end/short_fill.toml");
const std::string pretend_room = TIDEWRIGHT_BINARY_DIR "/tests/pretend_room/pretend_room";
const std::string leak = "home/waterroom/leak";
const std::string set = "home/waterroom/booster/set";
const std::string latched = "tidewright/waterroom/value/alarm/leak/latched";
// A story takes a quarter of a minute; each wait in it is bounded by the room's own time.
constexpr Milliseconds patience = 150s;

class WholeFill : public testing::Test {
 protected:
  void SetUp() override { watcher_.subscribe("#"); }

  void begin(const std::string& story) {
    const std::vector<std::string> arguments{pretend_room,
                                             "--config",
                                             room_file,
                                             "--broker",
                                             broker_.uri(),
                                             "--pace",
                                             "40",
                                             "--filled",
                                             "0.7",
                                             "--story",
                                             source_file("tests/end_to_end/stories/" + story)};
    story_ = std::make_unique<Process>(arguments, directory_.path() + "/story");
  }
  void expect_the_story_came_true() {
    EXPECT_EQ(story_->wait(patience), 0)
        << read_file(directory_.path() + "/story") << daemon_.log();
    while (watcher_.next(100ms)) {
    }
  }
  // How many messages lie before the first of that kind, from `from` on; all of them if none is.
  std::size_t position(const std::function<bool(const Message&)>& matches, std::size_t from = 0) {
    const auto& seen = watcher_.seen();
    const auto at =
        std::find_if(seen.begin() + static_cast<std::ptrdiff_t>(from), seen.end(), matches);
    return static_cast<std::size_t>(at - seen.begin());
  }
  static bool is_on(const Message& message) {
    return message.topic == set && message.payload == "ON";
  }

  TemporaryDirectory directory_;
  Broker broker_;
  MqttClient watcher_{broker_.port(), "watcher"};
  DaemonProcess daemon_{room_file, broker_.uri(), {"--pace", "40"}};
  std::unique_ptr<Process> story_;
};

TEST_F(WholeFill, ALatchOutlivesAKillAndOnlyAPersonEndsIt) {
  begin("latch.story");
  ASSERT_TRUE(watcher_.await(latched, "true", patience)) << daemon_.log();
  daemon_.kill();
  daemon_.start();
  expect_the_story_came_true();

  // Not once between the wet floor and the person's `start` was the pump told ON.
  const std::size_t wet =
      position([](const Message& m) { return m.topic == leak && m.payload == "wet"; });
  const std::size_t off =
      position([](const Message& m) { return m.topic == set && m.payload == "OFF"; }, wet);
  const std::size_t start = position([](const Message& m) {
    return m.topic == "tidewright/waterroom/ask" && m.payload.find("start") != std::string::npos;
  });
  EXPECT_LT(off, start);
  EXPECT_GT(position(is_on, wet), start);
}

TEST_F(WholeFill, AGapInTheGaugePausesItAndItGoesOnByItselfToStop) {
  begin("gap.story");
  expect_the_story_came_true();
  const auto& seen = watcher_.seen();
  EXPECT_TRUE(std::none_of(seen.begin(), seen.end(), [](const Message& message) {
    return message.topic == "tidewright/waterroom/ask";
  })) << "nobody had to ask";
}

}  // namespace
}  // namespace tidewright::support
