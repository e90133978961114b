// Each ask and each tell over a real broker: done, or refused and why.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/broker.hpp"
#include "tests/support/daemon_process.hpp"
#include "tests/support/hand.hpp"

namespace tidewright::support {
namespace {

using namespace std::chrono_literals;
using testing::HasSubstr;

class AskAndTell : public testing::Test {
 protected:
  void SetUp() override { ASSERT_TRUE(hand_.daemon_is_online()) << daemon_.log(); }

  void expect_done(const Said& said) const {
    EXPECT_TRUE(said.came) << daemon_.log();
    EXPECT_TRUE(said.done) << said.why;
  }
  void expect_refused(const Said& said, const std::string& why) const {
    EXPECT_TRUE(said.came) << daemon_.log();
    EXPECT_FALSE(said.done);
    EXPECT_THAT(said.why, HasSubstr(why));
  }
  void leak() {
    ASSERT_TRUE(hand_.says_until("leak", "wet", "alarm/leak/latched", "true")) << daemon_.log();
  }
  void dry() {
    ASSERT_TRUE(hand_.says_until("leak", "dry", "source/floor/quality", "good"));
    hand_.says("leak", "dry");
    hand_.says("leak", "dry");
  }

  Broker broker_;
  DaemonProcess daemon_{source_file("config/minimal.toml"), broker_.uri()};
  Hand hand_{broker_};
};

TEST_F(AskAndTell, AcknowledgeAndReset) {
  expect_refused(hand_.ask(R"("ask":"acknowledge","alarm":"leak")"), "nothing to acknowledge");
  expect_refused(hand_.ask(R"("ask":"reset","alarm":"leak")"), "nothing to reset");
  leak();
  expect_refused(hand_.ask(R"("ask":"acknowledge","alarm":"leak","occurrence":99)"),
                 "an older occurrence; the present one is 1");
  expect_done(hand_.ask(R"("ask":"acknowledge","alarm":"leak","occurrence":1)"));
  EXPECT_TRUE(hand_.shows("alarm/leak/state", "acknowledged"));
  expect_refused(hand_.ask(R"("ask":"reset","alarm":"leak")"), "must report dry twice");
  expect_refused(hand_.ask(R"("ask":"start")"), "reset it first");
  dry();

  const Said armed = hand_.ask(R"("ask":"reset","alarm":"leak")");
  expect_done(armed);
  EXPECT_TRUE(hand_.shows("alarm/leak/latched", "true")) << "asking changes nothing";
  expect_refused(hand_.ask(R"("ask":"confirm","alarm":"leak","token":99999)"), "not the token");
  expect_done(
      hand_.ask(R"("ask":"confirm","alarm":"leak","token":)" + std::to_string(armed.token)));
  EXPECT_TRUE(hand_.shows("alarm/leak/latched", "false"));
  EXPECT_THAT(hand_.commands(), Not(HasSubstr("ON"))) << "a reset starts nothing";
}

TEST_F(AskAndTell, ShelveAndUnshelve) {
  expect_refused(hand_.ask(R"("ask":"shelve","alarm":"leak","minutes":5)"), "may not be shelved");
  expect_done(hand_.ask(R"("ask":"shelve","alarm":"resin_breakthrough","minutes":60)"));
  EXPECT_TRUE(hand_.shows("alarm/resin_breakthrough/state", "shelved"));
  expect_refused(hand_.ask(R"("ask":"shelve","alarm":"resin_breakthrough","minutes":60)"),
                 "already");
  expect_done(hand_.ask(R"("ask":"unshelve","alarm":"resin_breakthrough")"));
  expect_refused(hand_.ask(R"("ask":"unshelve","alarm":"resin_breakthrough")"), "not shelved");
  expect_refused(hand_.ask(R"("ask":"shelve","alarm":"vat_low","minutes":5)"),
                 R"(There is no alarm "vat_low" in this room)");
}

TEST_F(AskAndTell, StartStopAndTest) {
  expect_done(hand_.ask(R"("ask":"start","minutes":30)"));
  expect_refused(hand_.ask(R"("ask":"start","minutes":2000)"), "out of range");
  expect_done(hand_.ask(R"("ask":"stop")"));
  EXPECT_TRUE(hand_.shows("vat/pure/state", "held"));
  expect_done(hand_.ask(R"("ask":"test")"));
  EXPECT_TRUE(hand_.client().seen().back().topic == "tidewright/waterroom/announcement" ||
              hand_.client().await_topic("tidewright/waterroom/announcement", 5s));
}

TEST_F(AskAndTell, EveryTell) {
  expect_done(hand_.tell(R"("tell":"measured","instrument":"product_tds","value":0,"unit":"ppm")"));
  expect_refused(hand_.tell(R"("tell":"measured","instrument":"product_tds","value":-1)"),
                 "out of range");
  expect_done(hand_.tell(R"("tell":"rotated")"));
  expect_done(hand_.tell(R"("tell":"replaced")"));
  expect_done(hand_.tell(R"("tell":"tested","instrument":"product_tds")"));
  expect_refused(hand_.tell(R"("tell":"tested","instrument":"floor")"), "try it first, then tell");
  expect_refused(hand_.tell(R"("tell":"tested","instrument":"flor")"), R"(Did you mean "floor"?)");
}

TEST_F(AskAndTell, AWetClothIsTimed) {
  ASSERT_TRUE(hand_.says_until("leak", "dry", "source/floor/quality", "good"));
  ASSERT_TRUE(hand_.says_until("vat_level", "45", "source/pure_level/quality", "good"));
  expect_done(hand_.ask(R"("ask":"start","minutes":30)"));
  ASSERT_TRUE(hand_.says_until("booster", "ON", "actuator/booster/confirmed", "true"));
  leak();
  ASSERT_TRUE(hand_.says_until("booster", "OFF", "actuator/booster/confirmed", "false"));
  const Said said = hand_.tell(R"("tell":"tested","instrument":"floor")");
  expect_done(said);
  EXPECT_THAT(said.why, HasSubstr("everything was off within"));
}

TEST_F(AskAndTell, ABypassIsArmedThenConfirmed) {
  expect_refused(hand_.ask(R"("ask":"bypass","cause":"vat_full","why":"to see")"),
                 "may not be bypassed");
  const Said armed = hand_.ask(R"("ask":"bypass","cause":"frost","why":"the probe fell")");
  expect_done(armed);
  const std::string confirm = R"("ask":"confirm_bypass","cause":"frost","token":)";
  expect_refused(hand_.ask(confirm + "99999"), "not the token");
  expect_done(hand_.ask(confirm + std::to_string(armed.token)));
  EXPECT_TRUE(hand_.shows("alarm/bypass_active/state", "unacknowledged"));
  expect_done(hand_.ask(R"("ask":"end_bypass","cause":"frost")"));
  expect_refused(hand_.ask(R"("ask":"end_bypass","cause":"frost")"), "not bypassed");
}

TEST_F(AskAndTell, ALeaseIsNotTriedWhileSomethingForbidsAStart) {
  expect_refused(hand_.ask(R"("ask":"test_lease","actuator":"booster")"), "");
  EXPECT_THAT(hand_.commands(), Not(HasSubstr("ON")));
}

TEST_F(AskAndTell, MistakesAreExplained) {
  expect_refused(hand_.ask(R"("ask":"resett","alarm":"leak")"), R"(Did you mean "reset"?)");
  expect_refused(hand_.ask(R"("ask":"reset","alarm":"leek")"), R"(Did you mean "leak"?)");
  expect_refused(hand_.ask(R"("ask":"stop","now":true)"), R"("now" is not a field)");
  hand_.client().publish("tidewright/waterroom/ask", "please stop");
  const auto answer = hand_.client().await_topic("tidewright/waterroom/answer", 5s);
  ASSERT_TRUE(answer);
  EXPECT_THAT(answer->payload, HasSubstr("not one JSON object"));
}

TEST_F(AskAndTell, TheAnswerGoesWhereMqtt5WantsIt) {
  hand_.client().subscribe("phone/ann");
  Message letter{
      .topic = "tidewright/waterroom/ask", .payload = R"({"ask":"stop","who":"ann"})", .qos = 1};
  letter.response_topic = "phone/ann";
  letter.correlation = "\x01\x02";
  hand_.client().publish(letter);
  const auto answer = hand_.client().await_topic("phone/ann", 5s);
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->correlation, "\x01\x02");
  EXPECT_THAT(answer->payload, HasSubstr(R"("ask":"stop","done":true)"));

  Hand old_phone{broker_, 4};
  expect_done(old_phone.ask(R"("ask":"stop")"));
}

TEST(AskAndTellAtStart, ARetainedRequestIsRefused) {
  Broker broker;
  Hand hand{broker};
  hand.client().publish("tidewright/waterroom/ask", R"({"ask":"start","who":"ann"})", true);
  DaemonProcess daemon{source_file("config/minimal.toml"), broker.uri()};
  const auto answer = hand.client().await_topic("tidewright/waterroom/answer", 15s);
  ASSERT_TRUE(answer) << daemon.log();
  EXPECT_THAT(answer->payload, HasSubstr(R"("done":false)"));
  EXPECT_THAT(answer->payload, HasSubstr("retain flag"));
}

}  // namespace
}  // namespace tidewright::support
