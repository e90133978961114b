// People are told without a hub: by a real web server and a real mail server, over lost ways and
// kill -9. TIDEWRIGHT_KILLS=50 in the long tier.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <sysexits.h>

#include <cstdlib>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "core/rehearsal/chance.hpp"
#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/hand.hpp"
#include "tests/support/receivers.hpp"
#include "tests/support/seed.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;
using nlohmann::json;

const std::string leak_topic = "leak";

bool is_leak_raised(const json& one) {
  return one.at("way") == "webhook"
             ? one.at("body").at("event") == "raised" && one.at("body").at("alarm") == "leak"
             : one.at("head").at("Subject") == "Water on the floor";
}

auto by(const std::string& way) {
  return [way](const json& one) { return one.at("way") == way; };
}

class AlertsEndToEnd : public testing::Test {
 protected:
  Broker broker;
  Receivers receivers;
};

TEST_F(AlertsEndToEnd, ALeakIsPostedAndMailedInTheWordsOfItsAnnouncement) {
  Hand hand(broker);
  MqttClient home(broker.port(), "home");
  home.subscribe("tidewright/waterroom/announcement");
  DaemonProcess daemon(receivers.household(), broker.uri());
  daemon.start();
  ASSERT_TRUE(hand.daemon_is_online());
  ASSERT_TRUE(hand.says_until(leak_topic, "wet", "alarm/leak/active", "true"));
  const auto told = home.await_topic("tidewright/waterroom/announcement", 10s);
  const auto arrived = receivers.await(is_leak_raised, 2, 20s);
  ASSERT_EQ(arrived.size(), 2u) << daemon.log();
  const json& posted = arrived[0].at("way") == "webhook" ? arrived[0] : arrived[1];
  const json& mailed = arrived[0].at("way") == "webhook" ? arrived[1] : arrived[0];
  EXPECT_TRUE(posted.at("signed")) << "by Python's hmac, over what the receiver has";
  EXPECT_EQ(posted.at("type"), "application/json");
  EXPECT_EQ(posted.at("body").at("notice"), posted.at("id"));
  EXPECT_EQ(posted.at("body").at("priority"), 1);
  const std::string text = posted.at("body").at("text");
  EXPECT_NE(text.find("Close the feed cock"), text.npos);
  ASSERT_TRUE(told);
  EXPECT_EQ(json::parse(told->payload).at("text"), text);
  EXPECT_EQ(mailed.at("id"), posted.at("id"));
  EXPECT_TRUE(mailed.at("encrypted"));
  EXPECT_EQ(mailed.at("by"), "room");
  EXPECT_EQ(mailed.at("to"), json({"ann@home.example", "bert@home.example"}));
  EXPECT_NE(mailed.at("text").get<std::string>().find(text), std::string::npos);
  EXPECT_EQ(mailed.at("head").at("Importance"), "high");
  EXPECT_EQ(mailed.at("head").at("Auto-Submitted"), "auto-generated");
  EXPECT_TRUE(hand.shows("way/webhook/waiting", "0"));
  EXPECT_TRUE(hand.shows("way/mail/open", "true"));
}

TEST_F(AlertsEndToEnd, ATestGoesEveryWayOnceWithStartTlsToo) {
  Hand hand(broker);
  DaemonProcess daemon(receivers.household("smtp"), broker.uri());
  daemon.start();
  ASSERT_TRUE(hand.daemon_is_online());
  EXPECT_TRUE(hand.ask(R"("ask":"test")").done);
  const auto posted = receivers.await(by("webhook"), 1, 20s);
  const auto mailed = receivers.await(by("mail"), 1, 20s);
  ASSERT_EQ(posted.size(), 1u) << daemon.log();
  ASSERT_EQ(mailed.size(), 1u) << daemon.log();
  EXPECT_EQ(posted[0].at("body").at("event"), "test");
  EXPECT_TRUE(mailed[0].at("encrypted"));
  EXPECT_EQ(daemon.terminate(), EX_OK);
  EXPECT_EQ(receivers.received().size(), 2u);
}

TEST_F(AlertsEndToEnd, AWayThatIsClosedIsTriedAgainWithTheSameId) {
  Hand hand(broker);
  receivers.turn_away("web", "503");
  DaemonProcess daemon(receivers.household(), broker.uri());
  daemon.start();
  ASSERT_TRUE(hand.daemon_is_online());
  ASSERT_TRUE(hand.says_until(leak_topic, "wet", "alarm/leak/active", "true"));
  EXPECT_TRUE(hand.shows("way/webhook/open", "false")) << daemon.log();
  EXPECT_TRUE(hand.shows("way/webhook/waiting", "1"));
  EXPECT_TRUE(hand.shows("way/webhook/trouble", "the receiver answers 503"));
  EXPECT_EQ(receivers.await(by("mail"), 1, 20s).size(), 1u) << "the other way is open";
  for (int i = 0; i < 3; ++i) EXPECT_TRUE(hand.ask(R"("ask":"test")").done);
  EXPECT_TRUE(hand.shows("way/webhook/waiting", "4"));
  EXPECT_EQ(hand.shown("way/webhook/trouble"), "the receiver answers 503") << "not of those behind";
  // Over a kill, too.
  daemon.kill();
  receivers.turn_away("web", "");
  daemon.start();
  const auto taken = receivers.await(
      [](const json& one) {
        return one.at("way") == "webhook" && one.at("turned_away").get<std::string>().empty();
      },
      4, 30s);
  ASSERT_EQ(taken.size(), 4u) << daemon.log();
  for (const json& one : receivers.received()) {
    if (!is_leak_raised(one)) continue;
    EXPECT_EQ(one.at("id"), taken[0].at("id"));
  }
  EXPECT_TRUE(hand.shows("way/webhook/waiting", "0"));
}

TEST_F(AlertsEndToEnd, AServerThatCannotProveItsNameIsToldNothing) {
  Hand hand(broker);
  std::string text = read_file(receivers.household());
  const std::string right = "ca_file = \"" + receivers.directory() + "/authority.pem\"";
  for (std::size_t at = 0; (at = text.find(right)) != text.npos;) text.erase(at, right.size());
  const std::string file = receivers.directory() + "/strangers.toml";
  write_file(file, text);
  DaemonProcess daemon(file, broker.uri());
  daemon.start();
  ASSERT_TRUE(hand.daemon_is_online());
  EXPECT_TRUE(hand.ask(R"("ask":"test")").done);
  EXPECT_TRUE(hand.shows("way/webhook/open", "false")) << daemon.log();
  EXPECT_TRUE(hand.shows("way/mail/open", "false"));
  EXPECT_NE(hand.shown("way/mail/trouble").find("certificate"), std::string::npos);
  EXPECT_TRUE(receivers.received().empty());
}

TEST_F(AlertsEndToEnd, ASecretThatIsNoneIsSaidAtTheStart) {
  write_file(receivers.directory() + "/secret", "hello\n");
  DaemonProcess daemon(receivers.household(), broker.uri());
  daemon.start();
  EXPECT_EQ(daemon.process().wait(5s), EX_CONFIG);
  EXPECT_NE(daemon.log().find("is no webhook's secret; expected whsec_"), std::string::npos);
  EXPECT_EQ(daemon.log().find("hello"), std::string::npos) << "a secret is never shown";
}

// Each number from 1 on arrives on each way: none was lost with a daemon that died, and a repeat
// says the same.
TEST_F(AlertsEndToEnd, NoKillLosesAnAnnouncement) {
  const char* kills = std::getenv("TIDEWRIGHT_KILLS");
  const int wanted = kills != nullptr ? std::atoi(kills) : 5;
  const std::uint64_t seed = seeds({1}).front();
  print_seed(seed);
  rehearsal::Chance chance(seed);
  DaemonProcess daemon(receivers.household(), broker.uri());
  for (int i = 0; i < wanted; ++i) {
    daemon.start();
    Hand hand(broker);
    ASSERT_TRUE(hand.daemon_is_online());
    const auto until =
        std::chrono::steady_clock::now() + Milliseconds{static_cast<int>(chance.uniform() * 1'500)};
    bool wet = false;
    do {
      hand.says(leak_topic, (wet = !wet) ? "wet" : "dry");
      hand.client().publish("tidewright/waterroom/ask", R"({"ask":"test","who":"ann","id":"1"})");
      // Some in a second: more would have the oldest given up.
      const auto next = std::chrono::steady_clock::now() + 200ms;
      while (hand.client().next(std::chrono::ceil<Milliseconds>(
          std::max<std::chrono::nanoseconds>(next - std::chrono::steady_clock::now(), 0ns)))) {
      }
    } while (std::chrono::steady_clock::now() < until);
    daemon.kill();
  }
  daemon.start();
  Hand hand(broker);
  ASSERT_TRUE(hand.daemon_is_online());
  EXPECT_TRUE(hand.shows("way/webhook/waiting", "0")) << daemon.log();
  EXPECT_TRUE(hand.shows("way/mail/waiting", "0"));

  std::map<std::string, std::set<unsigned long>> numbers;
  std::map<std::string, std::string> said;
  std::set<std::string> instances;
  for (const json& one : receivers.received()) {
    const std::string id = one.at("id");
    const std::size_t dash = id.find('-');
    instances.insert(id.substr(0, dash));
    numbers[one.at("way")].insert(std::stoul(id.substr(dash + 1)));
    const std::string title =
        one.at("way") == "webhook" ? one.at("body").at("title") : one.at("head").at("Subject");
    EXPECT_EQ(said.emplace(id, title).first->second, title) << id;
  }
  EXPECT_EQ(instances.size(), 1u);
  ASSERT_EQ(numbers.size(), 2u);
  EXPECT_EQ(numbers["webhook"], numbers["mail"]);
  EXPECT_EQ(*numbers["webhook"].rbegin(), numbers["webhook"].size()) << "one is missing";
  EXPECT_GE(numbers["webhook"].size(), static_cast<std::size_t>(wanted) / 2) << "too little tried";
  fmt::print("{} kills: {} announcements, {} arrivals\n", wanted, numbers["webhook"].size(),
             receivers.received().size());
}

}  // namespace
}  // namespace tidewright::support
