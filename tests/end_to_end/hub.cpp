// A hub at a real broker beside the real daemon and a pretend room that runs fast: whatever befalls
// the room, the broker, the daemon and the household's file, the hub keeps a device that is whole.
// TIDEWRIGHT_HUB_HOURS=24 lets so many further hours of the room pass (tests/long.sh hub).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>

#include "config/reader/reader.hpp"
#include "core/rules/catalogue.hpp"
#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/hub_capture.hpp"
#include "tests/support/mqtt_client.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;

const std::string pretend_room = TIDEWRIGHT_BINARY_DIR "/tests/pretend_room/pretend_room";
const std::string room = "tidewright/waterroom/";
// What takes a tenth of this; a story, up to a third.
constexpr Milliseconds patience = 40s;

std::string replaced(std::string text, const std::string& what, const std::string& by) {
  const auto at = text.find(what);
  if (at == text.npos) throw std::runtime_error("no " + what);
  return text.replace(at, what.size(), by);
}

int hours_more() {
  const char* const hours = std::getenv("TIDEWRIGHT_HUB_HOURS");
  return hours == nullptr ? 0 : std::atoi(hours);
}

// In each hour an instrument dies and comes back, and somebody draws.
std::string further_hours(int hours) {
  const std::vector<std::string> instruments{"product_tds", "feed_tds", "pure_level", "room",
                                             "floor"};
  std::string story;
  for (int hour = 0; hour < hours; ++hour) {
    const std::string& one = instruments[static_cast<std::size_t>(hour) % instruments.size()];
    story.append(one).append(" falls silent\nwait 20 min\n");
    story.append(one).append(" works again\ndraw 12 l\nwait 40 min\n");
  }
  return story;
}

class HubTest : public testing::Test {
 protected:
  explicit HubTest(const std::string& pace = "100")
      : pace_(pace), daemon_(file_, broker_.uri(), {"--pace", pace}) {}
  void SetUp() override { hub_->subscribe("#"); }

  // Hears until it holds.
  template <class Condition>
  bool hears(Condition holds, Milliseconds bound = patience) {
    const auto end = std::chrono::steady_clock::now() + bound;
    while (!holds()) {
      if (std::chrono::steady_clock::now() >= end) return false;
      if (const auto message = hub_->next(50ms)) capture_.hear(*message);
    }
    return true;
  }
  bool hears_value(const std::string& path, const std::string& value) {
    return hears([&] { return capture_.said(room + path) == value; });
  }
  void hear_all() {
    while (const auto message = hub_->next(0ms)) capture_.hear(*message);
  }
  // As a person presses it at the hub: only what is available can be pressed.
  void press(const std::string& key) {
    ASSERT_TRUE(hears([&] { return can_press(key); })) << key << daemon_.log();
    const HubComponent button = capture_.components().at(key);
    hub_->publish(button.command_topic, button.payload_press);
  }
  bool can_press(const std::string& key) const {
    const auto found = capture_.components().find(key);
    if (found == capture_.components().end()) return false;
    for (const std::string& topic : found->second.availability_topics) {
      if (capture_.said(topic) != "online" && capture_.said(topic) != "true") return false;
    }
    return true;
  }
  void play(const std::string& story) {
    write_file(directory_.path() + "/story", story);
    const std::vector<std::string> arguments{pretend_room,
                                             "--config",
                                             file_,
                                             "--broker",
                                             broker_.uri(),
                                             "--pace",
                                             pace_,
                                             "--filled",
                                             "0.3",
                                             "--story",
                                             directory_.path() + "/story"};
    Process process(arguments, directory_.path() + "/told");
    const Milliseconds bound = patience + hours_more() * Milliseconds{60min} / 60;
    EXPECT_TRUE(hears([&] { return !process.running(); }, bound));
    EXPECT_EQ(process.wait(1s), 0) << read_file(directory_.path() + "/told") << daemon_.log();
    hear_all();
  }
  // All that a client finds which comes now.
  std::vector<Message> retained() const {
    MqttClient fresh(broker_.port(), "fresh");
    fresh.subscribe("#");
    fresh.publish("end/of/retained", "1");
    fresh.await("end/of/retained", "1", 5s);
    return fresh.seen();
  }
  bool retains(const std::string& topic) const {
    for (const Message& message : retained()) {
      if (message.topic == topic && message.retained) return true;
    }
    return false;
  }
  std::set<std::string> present() const {
    const auto understood = config::read(read_file(file_));
    const room::Room& of = understood.household->room;
    std::set<std::string> things{"vat/pure", "purifier", "ledger", "protection", "balance"};
    for (const auto& each : of.actuators) things.insert("actuator/" + each.id);
    for (const auto& each : of.instruments) things.insert("source/" + each.id);
    for (const rules::Rule* rule : rules::catalogue) {
      if (rule->applies(of)) things.insert("alarm/" + std::string(rule->name));
    }
    return things;
  }
  void expect_whole(const std::string& when) {
    hear_all();
    capture_.compare_with_retained(retained(), room, present());
    EXPECT_THAT(capture_.problems(), testing::IsEmpty()) << when;
  }
  std::map<std::string, std::string> ids() const {
    std::map<std::string, std::string> found;
    for (const auto& [key, component] : capture_.components()) found[key] = component.unique_id;
    return found;
  }
  // The household's file changes while the daemon is away.
  void restart_with(const std::string& household) {
    EXPECT_EQ(daemon_.terminate(5s), 0);
    EXPECT_TRUE(hears([&] { return capture_.said("tidewright/online") == "offline"; }));
    write_file(file_, household);
    daemon_.start();
    ASSERT_TRUE(hears([&] { return capture_.said("tidewright/online") == "online"; }))
        << daemon_.log();
  }

  const std::string pace_;
  TemporaryDirectory directory_;
  Broker broker_;
  std::string file_ = [this] {
    std::string path = directory_.path() + "/household.toml";
    write_file(path, read_file(source_file("config/minimal.toml")));
    return path;
  }();
  std::unique_ptr<MqttClient> hub_ = std::make_unique<MqttClient>(broker_.port(), "hub");
  HubCapture capture_;
  DaemonProcess daemon_;
};

TEST_F(HubTest, KeepsAWholeDeviceWhateverBefalls) {
  ASSERT_TRUE(hears([&] { return can_press("test_announcement"); })) << daemon_.log();
  play(read_file(source_file("tests/end_to_end/stories/hub.story")));
  expect_whole("after a bad hour");
  const auto known = ids();

  if (hours_more() > 0) play(further_hours(hours_more()));
  expect_whole("after the further hours");

  daemon_.kill();
  daemon_.start();
  ASSERT_TRUE(hears([&] { return capture_.said("tidewright/online") == "online"; }));
  ASSERT_TRUE(hears_value("value/alarm/unclean_start/active", "true")) << daemon_.log();
  expect_whole("after a crash");

  broker_.kill();
  broker_.start();
  hub_ = std::make_unique<MqttClient>(broker_.port(), "hub");
  hub_->subscribe("#");
  const int configs = capture_.configs_heard();
  ASSERT_TRUE(hears([&] { return capture_.configs_heard() > configs; })) << daemon_.log();
  ASSERT_TRUE(hears([&] { return retains(room + "value/ledger/made_total_l"); }));
  expect_whole("after the broker forgot everything");
  EXPECT_EQ(ids(), known);
}

// At the pace of people: a reset is confirmed within half a minute.
class HubPresses : public HubTest {
 protected:
  HubPresses() : HubTest("1") {}
  void leak_says(const std::string& word) { hub_->publish("home/waterroom/leak", word); }
  void reset_the_leak() {
    ASSERT_TRUE(hears([&] {
      leak_says("dry");
      return capture_.said(room + "value/source/floor/quality") == "good";
    }));
    for (int report = 0; report < 2; ++report) leak_says("dry");
    press("reset_leak");
    press("confirm_reset_leak");
    EXPECT_TRUE(hears_value("value/alarm/leak/latched", "false")) << daemon_.log();
  }
};

TEST_F(HubPresses, AcknowledgeResetAndConfirmAreThreeButtons) {
  ASSERT_TRUE(hears([&] { return can_press("test_announcement"); })) << daemon_.log();
  EXPECT_FALSE(can_press("acknowledge_leak"));
  leak_says("wet");
  press("acknowledge_leak");
  EXPECT_TRUE(hears_value("value/alarm/leak/state", "acknowledged")) << daemon_.log();
  EXPECT_FALSE(can_press("confirm_reset_leak"));
  reset_the_leak();
  press("test_announcement");
  EXPECT_TRUE(hears([&] {
    return capture_.said(room + "announcement").find(R"("event_type":"test")") != std::string::npos;
  }));
  expect_whole("after the presses");
}

TEST_F(HubPresses, AnOldButtonQuietsNoNewAlarm) {
  ASSERT_TRUE(hears([&] { return can_press("test_announcement"); })) << daemon_.log();
  leak_says("wet");
  ASSERT_TRUE(hears([&] { return can_press("acknowledge_leak"); })) << daemon_.log();
  const HubComponent old = capture_.components().at("acknowledge_leak");
  press("acknowledge_leak");
  reset_the_leak();
  leak_says("wet");
  ASSERT_TRUE(hears_value("value/alarm/leak/occurrence", "2")) << daemon_.log();
  hub_->publish(old.command_topic, old.payload_press);
  ASSERT_TRUE(hears([&] {
    return capture_.said(room + "answer").find("older occurrence") != std::string::npos;
  }));
  EXPECT_EQ(capture_.said(room + "value/alarm/leak/state"), "unacknowledged");
}

TEST_F(HubTest, KeepsItsIdsWhenAnInstrumentIsRenamedAndForgetsOneThatIsRemoved) {
  ASSERT_TRUE(hears([&] { return can_press("test_announcement"); })) << daemon_.log();
  auto known = ids();
  const std::string household = read_file(file_);
  const std::string renamed = replaced(replaced(household, "[leak.floor]", "[leak.drain]"),
                                       "home/waterroom/feed_tds", "home/cellar/feed");
  restart_with(renamed);
  ASSERT_TRUE(hears([&] { return !retains(room + "source/floor/online"); })) << daemon_.log();
  expect_whole("after a new name and a new topic");
  EXPECT_EQ(ids(), known);
  EXPECT_EQ(capture_.components().at("wetness_floor_1_wet").state_topic,
            room + "value/source/drain/wet");

  const auto begin = renamed.find("[temperature.room]");
  const auto end = renamed.find("\n\n", begin);
  restart_with(std::string(renamed).erase(begin, end - begin));
  ASSERT_TRUE(hears([&] { return !retains(room + "source/room/online"); })) << daemon_.log();
  ASSERT_TRUE(hears([&] { return !capture_.components().contains("temperature_room_1_quality"); }));
  expect_whole("after a thermometer was taken out");
  std::erase_if(known,
                [&](const auto& each) { return !capture_.components().contains(each.first); });
  EXPECT_EQ(ids(), known);

  restart_with(renamed + "\n[hub]\ndiscovery = false\n");
  ASSERT_TRUE(hears([&] { return capture_.components().empty(); })) << daemon_.log();
  ASSERT_TRUE(hears([&] {
    const auto all = retained();
    return std::none_of(all.begin(), all.end(), [](const Message& message) {
      return message.retained && message.topic.starts_with("homeassistant/");
    });
  })) << "off leaves nothing";
  expect_whole("after discovery was switched off");
}

// Twenty births one upon the other are a worse storm than twenty in a minute.
TEST_F(HubTest, AHubThatStartsAgainAndAgainIsAnsweredInTimeAndWithoutAStorm) {
  ASSERT_TRUE(hears([&] { return can_press("test_announcement"); })) << daemon_.log();
  std::ptrdiff_t from = 0;
  const auto where = [&](const std::string& topic) {
    const auto& seen = hub_->seen();
    return std::find_if(seen.begin() + from, seen.end(),
                        [&](const Message& message) { return message.topic == topic; });
  };
  const auto came = [&](const std::string& topic) { return where(topic) != hub_->seen().end(); };
  ASSERT_TRUE(hears([&] { return came(room + "ledger"); }, 10s)) << "of the first telling";

  const int before = capture_.configs_heard();
  for (int birth = 0; birth < 20; ++birth) hub_->publish("homeassistant/status", "online");
  from = static_cast<std::ptrdiff_t>(hub_->seen().size());
  ASSERT_TRUE(hears([&] { return came("tidewright/online"); }, 10s));
  from = where("tidewright/online") - hub_->seen().begin();
  EXPECT_TRUE(hears([&] { return came(room + "value/ledger/made_total_l"); }, 10s));
  EXPECT_TRUE(hears([&] { return capture_.configs_heard() > before; }, 10s));
  EXPECT_FALSE(came(room + "ledger")) << "no hub reads the documents";
  hub_->publish("homeassistant/status", "offline");
  EXPECT_LE(capture_.configs_heard(), before + 2);
  expect_whole("after the births");
}

}  // namespace
}  // namespace tidewright::support
