// The panel of the real daemon at a real broker: what it shows and how soon, and what it costs
// everything else: nothing.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <regex>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/mqtt_client.hpp"
#include "tests/support/resident.hpp"
#include "tests/support/web_client.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;
using Steady = std::chrono::steady_clock;
using ::testing::HasSubstr;

const std::string leak = "home/waterroom/leak";
const std::string set = "home/waterroom/booster/set";
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
constexpr bool sanitized = true;  // its own memory is not the daemon's
#else
constexpr bool sanitized = false;
#endif
const std::string stream_request = "GET /events HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n";

// The minimal household with a panel, in a file of its own.
class PanelFile {
 public:
  explicit PanelFile(const std::string& settings = "port = 0") {
    write_file(path(),
               read_file(source_file("config/minimal.toml")) + "\n[panel]\n" + settings + "\n");
  }
  std::string path() const { return directory_.path() + "/household.toml"; }

 private:
  TemporaryDirectory directory_;
};

// Where the daemon says that its panel is; 0 if it does not.
int panel_port(DaemonProcess& daemon) {
  static const std::regex said("The panel is at http://127[.]0[.]0[.]1:([0-9]+)/[.]");
  std::smatch found;
  std::string log;
  eventually(10s, [&] { return std::regex_search(log = daemon.log(), found, said); });
  return found.size() == 2 ? std::stoi(found[1]) : 0;
}

std::size_t threads(DaemonProcess& daemon) {
  const auto tasks = "/proc/" + std::to_string(daemon.process().pid()) + "/task";
  const std::filesystem::directory_iterator all(tasks);
  return static_cast<std::size_t>(std::distance(begin(all), end(all)));
}

struct Panelled : public ::testing::Test {
  Broker broker;
  MqttClient home{broker.port(), "home"};
  PanelFile file;
  DaemonProcess daemon{file.path(), broker.uri()};
  int port = panel_port(daemon);

  void SetUp() override {
    home.subscribe(set);
    home.subscribe("tidewright/online");
    ASSERT_TRUE(home.await("tidewright/online", "online", 20s));
    ASSERT_NE(port, 0) << daemon.log();
  }
};

TEST_F(Panelled, ShowsALeakWithin300MillisecondsOfItsMessage) {
  WebClient page(port);
  ASSERT_TRUE(page.send(stream_request));
  ASSERT_THAT(page.read_until("event: snapshot", 10s), HasSubstr("event: snapshot"));
  // Quiet before: the reporter slows down bursts only.
  ASSERT_THAT(page.read_until("event: beat", 30s), HasSubstr("event: beat"));
  const auto said = Steady::now();
  home.publish(leak, "wet");
  EXPECT_THAT(page.read_until("Water on the floor", 10s), HasSubstr("Water on the floor"));
  const auto took = Steady::now() - said;
  RecordProperty("milliseconds", static_cast<int>(took / 1ms));
  EXPECT_LT(took, 300ms);
  EXPECT_THAT(get_page(port, "/why"), HasSubstr("Water on the floor"));
}

// How long half of the reactions to a wet report took, in as many as fit into `span`. While the
// trip stands a report is answered twice a second at most.
std::chrono::microseconds usual_reaction(MqttClient& home, std::chrono::seconds span) {
  std::vector<std::chrono::microseconds> took;
  const auto end = Steady::now() + span;
  while (Steady::now() < end) {
    const auto said = Steady::now();
    home.publish(leak, "wet");
    EXPECT_TRUE(home.await(set, "OFF", 5s));
    took.push_back(std::chrono::floor<std::chrono::microseconds>(Steady::now() - said));
    const auto next = said + 600ms;
    while (Steady::now() < next) home.next(std::chrono::ceil<Milliseconds>(next - Steady::now()));
  }
  std::sort(took.begin(), took.end());
  ::testing::Test::RecordProperty("worst_microseconds", static_cast<int>(took.back().count()));
  return took[took.size() / 2];
}

// TIDEWRIGHT_PANEL_SECONDS: how long; sh tests/long.sh panel has ten minutes.
TEST_F(Panelled, FiftyOpenPagesChangeNothingForALeak) {
  const char* wanted = std::getenv("TIDEWRIGHT_PANEL_SECONDS");
  const std::chrono::seconds span{wanted != nullptr ? std::atoi(wanted) : 5};
  const auto alone = usual_reaction(home, std::min(span, std::chrono::seconds{60}));
  const long resident_before = resident_kib(daemon.process().pid());
  std::vector<std::unique_ptr<WebClient>> pages;
  for (int i = 0; i < 50; ++i) {
    pages.push_back(std::make_unique<WebClient>(port));
    pages.back()->send(stream_request);
    ASSERT_THAT(pages.back()->read_until("event: snapshot", 10s), HasSubstr("event: snapshot"));
  }
  const auto watched = usual_reaction(home, span);
  RecordProperty("alone_microseconds", static_cast<int>(alone.count()));
  RecordProperty("watched_microseconds", static_cast<int>(watched.count()));
  EXPECT_LT(watched, 2 * alone + 2ms);
  for (auto& page : pages) {
    EXPECT_THAT(page->read_until("Water on the floor", 10s), HasSubstr("Water on the floor"));
  }
  const long resident = resident_kib(daemon.process().pid()) - resident_before;
  RecordProperty("resident_kib_of_50", static_cast<int>(resident));
  EXPECT_LT(resident, sanitized ? 100L * 1024 : 3L * 1024);
}

TEST_F(Panelled, ATermSignalEndsItWithinTwoSecondsWhoeverLooks) {
  WebClient page(port), silent(port);
  page.send(stream_request);
  page.read_until("event: snapshot", 10s);
  EXPECT_EQ(daemon.terminate(2s), 0);
  EXPECT_TRUE(page.ended(1s));
}

// Each at a broker of its own, for lines come up with threads that end again.
TEST(Panel, WithoutItsSectionThereIsNeitherThreadNorSocket) {
  Broker broker, another;
  PanelFile file;
  DaemonProcess with(file.path(), broker.uri());
  ASSERT_NE(panel_port(with), 0);
  DaemonProcess without(source_file("config/minimal.toml"), another.uri());
  ASSERT_TRUE(with.logged("Connected to the broker", 20s));
  ASSERT_TRUE(without.logged("Connected to the broker", 20s));
  EXPECT_TRUE(eventually(10s, [&] { return threads(without) + 1 == threads(with); }))
      << threads(without) << " and " << threads(with);
  EXPECT_EQ(without.log().find("panel"), std::string::npos);
}

TEST(Panel, APortThatIsTakenCostsThePanelOnly) {
  Broker broker;
  MqttClient home(broker.port(), "home");
  home.subscribe("tidewright/online");
  PanelFile file("port = " + std::to_string(broker.port()));
  DaemonProcess daemon(file.path(), broker.uri());
  EXPECT_TRUE(daemon.logged("The panel cannot listen at 127.0.0.1", 20s)) << daemon.log();
  EXPECT_TRUE(home.await("tidewright/online", "online", 20s));
}

}  // namespace
}  // namespace tidewright::support
