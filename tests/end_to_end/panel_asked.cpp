// Asked and told over the panel of the real daemon, at a real broker: what it does is seen over
// MQTT.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <regex>
#include <thread>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/hand.hpp"
#include "tests/support/mqtt_client.hpp"
#include "tests/support/web_client.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

const std::string token = "an invented token of the basement";

// The minimal household with a panel that may be asked, in files of its own.
class AskedFile {
 public:
  explicit AskedFile(const std::string& token_written = token) {
    write_file(token_path(), token_written + "\n");
    write_file(path(), read_file(source_file("config/minimal.toml")) +
                           "\n[panel]\nport = 0\ntoken_file = \"" + token_path() + "\"\n");
  }
  std::string path() const { return directory_.path() + "/household.toml"; }
  std::string token_path() const { return directory_.path() + "/token"; }

 private:
  TemporaryDirectory directory_;
};

std::string found_in(const std::string& text, const std::string& pattern) {
  std::smatch found;
  return std::regex_search(text, found, std::regex(pattern)) ? found[1].str() : "";
}

// What a browser without script does.
class Visit {
 public:
  explicit Visit(int port) : port_(port) {}

  std::string enter(const std::string& with = token) {
    std::string answer = post_form(
        port_, "/tell/enter", "who=ann&token=" + std::regex_replace(with, std::regex(" "), "+"));
    cookie_ = found_in(answer, "Set-Cookie: (tidewright_panel=[0-9a-f]+);");
    form_ = found_in(get("/tell"), "name=\"form\" value=\"([0-9a-f]+)\"");
    return answer;
  }
  std::string get(const std::string& path) const {
    return get_page(port_, path, "Cookie: " + cookie_ + "\r\n");
  }
  // The page to which the answer leads.
  std::string post(const std::string& path, const std::string& fields = "") const {
    const std::string answer = send(path, fields);
    return get(found_in(answer, "Location: (\\S+)\r\n"));
  }
  std::string send(const std::string& path, const std::string& fields = "") const {
    return post_form(port_, "/tell/" + path, "form=" + form_ + fields,
                     "Cookie: " + cookie_ + "\r\n");
  }

 private:
  int port_;
  std::string cookie_ = "none=1", form_;
};

struct PanelAsked : public ::testing::Test {
  Broker broker;
  AskedFile file;
  DaemonProcess daemon{file.path(), broker.uri()};
  Hand hand{broker};
  std::unique_ptr<Visit> ann;

  void SetUp() override {
    ASSERT_TRUE(hand.daemon_is_online()) << daemon.log();
    ASSERT_TRUE(daemon.logged("The panel is at ", 10s));
    const std::string port =
        found_in(daemon.log(), "The panel is at http://127[.]0[.]0[.]1:([0-9]+)/");
    ASSERT_NE(port, "") << daemon.log();
    ann = std::make_unique<Visit>(std::stoi(port));
  }
  void leak() {
    ASSERT_TRUE(hand.says_until("leak", "wet", "alarm/leak/latched", "true")) << daemon.log();
  }
  // The buttons are there as soon as the panel was told.
  std::string occurrence() {
    std::string value;
    eventually(10s, [&] {
      value =
          found_in(ann->get("/"), "acknowledge/leak\".*?name=\"occurrence\" value=\"([0-9]+)\"");
      return !value.empty();
    });
    return value;
  }
};

TEST_F(PanelAsked, WithoutTheTokenItCanOnlyBeLookedAt) {
  leak();
  EXPECT_TRUE(eventually(
      10s, [&] { return ann->get("/").find("href=\"/tell\">Ack") != std::string::npos; }));
  EXPECT_THAT(ann->get("/"), Not(HasSubstr("<form")));
  EXPECT_THAT(ann->enter("another token that is wrong"), StartsWith("HTTP/1.1 401 "));
  EXPECT_THAT(ann->send("acknowledge/leak", "&occurrence=1"), StartsWith("HTTP/1.1 401 "));
  EXPECT_TRUE(hand.shows("alarm/leak/to_acknowledge", "true"));
}

TEST_F(PanelAsked, AcknowledgesALeakResetsItAndStartsNothing) {
  ann->enter();
  leak();
  EXPECT_EQ(occurrence(), "1");
  EXPECT_THAT(ann->post("acknowledge/leak", "&occurrence=2"), HasSubstr("the present one is 1."));
  const std::string seen = ann->post("acknowledge/leak", "&occurrence=1");
  EXPECT_THAT(seen, HasSubstr("<strong>Done.</strong> Water on the floor: I have seen it."));
  EXPECT_THAT(seen, Not(HasSubstr("action=\"/tell/acknowledge/leak\""))) << "and it is on the page";
  EXPECT_TRUE(hand.shows("alarm/leak/to_acknowledge", "false"));
  EXPECT_THAT(ann->post("reset/leak"), HasSubstr("must report dry twice"));
  ASSERT_TRUE(hand.says_until("leak", "dry", "source/floor/quality", "good"));
  hand.says("leak", "dry");
  hand.says("leak", "dry");
  std::string armed;
  EXPECT_TRUE(eventually(10s, [&] {
    armed = found_in(ann->post("reset/leak"), "name=\"token\" value=\"([0-9]+)\"");
    return !armed.empty();
  }));
  EXPECT_TRUE(hand.shows("alarm/leak/latched", "true"));
  EXPECT_THAT(ann->post("confirm/leak", "&token=" + armed), HasSubstr("nothing starts by itself"));
  EXPECT_TRUE(hand.shows("alarm/leak/latched", "false"));
  EXPECT_TRUE(hand.shows("actuator/booster/commanded", "false"));
}

TEST_F(PanelAsked, TellsAndAsksWithTheAnswerOnThePage) {
  EXPECT_THAT(ann->enter(), HasSubstr("Location: /tell"));
  hand.says("vat_level", "60");  // a curve, on which it is marked
  EXPECT_THAT(ann->post("measured/product_tds", "&value=0%2C4"),
              HasSubstr("<strong>Done.</strong>"));
  EXPECT_THAT(ann->post("measured/product_tds", "&value=99999"), HasSubstr("out of range"));
  EXPECT_THAT(ann->post("stop/make_water"), HasSubstr("A stop was asked for"));
  EXPECT_THAT(ann->post("start/make_water", "&minutes=999"), HasSubstr("out of range"));
  EXPECT_TRUE(eventually(20s, [&] {
    return ann->get("/history").find("told by ann") != std::string::npos;
  })) << "it is in the journal";
  EXPECT_EQ(daemon.log().find(token), std::string::npos);
}

TEST_F(PanelAsked, AnswersWhileItIsAskedOverMqttToo) {
  ann->enter();
  for (int i = 0; i < 5; ++i) {
    const Said said = hand.ask(R"("ask":"stop")");
    EXPECT_TRUE(said.done) << said.why;
    EXPECT_THAT(ann->post("stop/make_water", "&minutes=60"), HasSubstr("A stop was asked for"));
  }
}

// How long half of the reactions to a wet report took. While the trip stands a report is answered
// twice a second at most.
std::chrono::microseconds usual_reaction(MqttClient& home) {
  using Steady = std::chrono::steady_clock;
  std::vector<std::chrono::microseconds> took;
  for (int i = 0; i < 9; ++i) {
    const auto said = Steady::now();
    home.publish("home/waterroom/leak", "wet");
    EXPECT_TRUE(home.await("home/waterroom/booster/set", "OFF", 5s));
    took.push_back(std::chrono::floor<std::chrono::microseconds>(Steady::now() - said));
    const auto next = said + 600ms;
    while (Steady::now() < next) home.next(std::chrono::ceil<Milliseconds>(next - Steady::now()));
  }
  std::sort(took.begin(), took.end());
  return took[took.size() / 2];
}

TEST_F(PanelAsked, AskingWithoutEndChangesNothingForALeak) {
  ann->enter();
  MqttClient home(broker.port(), "home");
  home.subscribe("home/waterroom/booster/set");
  const auto alone = usual_reaction(home);
  std::atomic<bool> over = false;
  std::atomic<int> asked = 0;
  std::thread insistent([&] {
    while (!over) asked += ann->send("stop/make_water").starts_with("HTTP/1.1 303 ") ? 1 : 0;
  });
  const auto beside = usual_reaction(home);
  over = true;
  insistent.join();
  RecordProperty("alone_microseconds", static_cast<int>(alone.count()));
  RecordProperty("beside_microseconds", static_cast<int>(beside.count()));
  RecordProperty("asked", asked);
  EXPECT_GT(asked, 20);
  EXPECT_LT(beside, 2 * alone + 2ms);
}

TEST_F(PanelAsked, ATermSignalEndsItWithinTwoSecondsWhoeverAsks) {
  ann->enter();
  ann->post("stop/make_water");
  EXPECT_EQ(daemon.terminate(2s), 0);
}

TEST(PanelUnasked, ATokenThatIsTooShortIsSaidAndNothingIsAsked) {
  Broker broker;
  AskedFile file("too short");
  DaemonProcess daemon(file.path(), broker.uri());
  ASSERT_TRUE(daemon.logged("has 9 characters; expected 16 to 128", 20s)) << daemon.log();
  ASSERT_TRUE(daemon.logged("The panel is at ", 10s));
  EXPECT_EQ(daemon.log().find("too short"), std::string::npos);
  const std::string port =
      found_in(daemon.log(), "The panel is at http://127[.]0[.]0[.]1:([0-9]+)/");
  EXPECT_THAT(get_page(std::stoi(port), "/tell"), StartsWith("HTTP/1.1 404 "));
  EXPECT_THAT(post_form(std::stoi(port), "/tell/enter", "who=ann&token=too+short"),
              StartsWith("HTTP/1.1 405 "));
}

}  // namespace
}  // namespace tidewright::support
