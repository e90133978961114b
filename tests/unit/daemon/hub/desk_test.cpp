#include "daemon/hub/desk.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/rooms.hpp"

namespace tidewright::hub {
namespace {

using testing::HasSubstr;

// 2026-03-01 06:30:00 UTC, one hour east of it (`date -u -d '2026-03-01 06:30' +%s`).
const Instant now{std::chrono::seconds{1'772'346'600}};
const WallClock wall{Duration{0}, std::chrono::minutes{60}};

config::Household household() {
  config::Household made;
  made.room = support::minimal_room();
  made.room.id = "waterroom";
  config::Source leak;
  leak.topic = "home/waterroom/leak";
  leak.availability = {"home/waterroom/leak/status", "online", "offline"};
  made.sources = {leak};
  made.outlets.emplace_back().topic = "home/waterroom/booster/set";
  return made;
}

Letter ask(std::string json) { return {Verb::ask, std::move(json), false, "", ""}; }

class DeskTest : public testing::Test {
 protected:
  auto take(const Letter& letter) { return desk_.take(letter, now, wall); }

  config::Household household_ = household();
  Desk desk_{household_, [] { return 123'456U; }};
};

TEST_F(DeskTest, AnswersWithWhatItWasAboutAndTheToken) {
  const auto taken =
      std::get<Ask>(take(ask(R"({"ask":"reset","alarm":"leak","who":"ann","id":"7"})")));
  EXPECT_EQ(taken.token, 123'456U);
  const Answer armed{taken.ticket, true, {Why::armed, no_subject, {123'456}}};
  const auto reply = desk_.reply(armed, "confirm within 30 s", now, wall);
  ASSERT_TRUE(reply);
  EXPECT_EQ(reply->message.topic, "tidewright/waterroom/answer");
  EXPECT_FALSE(reply->message.retained);
  EXPECT_EQ(reply->message.payload,
            R"({"at":"2026-03-01T07:30:00+01:00","ask":"reset","id":"7","done":true,)"
            R"("why":"confirm within 30 s","token":123456})");
  EXPECT_FALSE(desk_.reply(armed, "again", now, wall)) << "one answer each";
}

TEST_F(DeskTest, GivesABypassATokenToo) {
  const auto taken = std::get<Ask>(
      take(ask(R"({"ask":"bypass","cause":"frost","why":"the probe fell","who":"ann"})")));
  EXPECT_EQ(taken.token, 123'456U);
  const Answer armed{taken.ticket, true, {Why::bypass_armed, no_subject, {123'456}}};
  const auto reply = desk_.reply(armed, "confirm within 30 s", now, wall);
  ASSERT_TRUE(reply);
  EXPECT_THAT(reply->message.payload, HasSubstr(R"("token":123456)"));
}

TEST_F(DeskTest, RefusesAtOnceWhatItDoesNotUnderstand) {
  const auto reply = std::get<Reply>(take({Verb::tell, R"({"tell":"rotated"})", false, "", "c"}));
  EXPECT_EQ(reply.message.topic, "tidewright/waterroom/answer");
  EXPECT_EQ(reply.correlation, "c");
  EXPECT_EQ(reply.message.payload,
            R"({"at":"2026-03-01T07:30:00+01:00","tell":"rotated","done":false,)"
            R"("why":"\"who\" is missing. \"rotated\" needs: who."})");
}

// The panel shows the answer itself: it is the one that MQTT would have had.
TEST_F(DeskTest, KnowsAQuestionOfThePanelAgain) {
  Letter letter = ask(R"({"ask":"reset","alarm":"leak","who":"ann"})");
  letter.question = 17;
  const auto taken = std::get<Ask>(take(letter));
  const Answer armed{taken.ticket, true, {Why::armed, no_subject, {123'456}}};
  const auto reply = desk_.reply(armed, "confirm within 30 s", now, wall);
  ASSERT_TRUE(reply);
  EXPECT_EQ(reply->question, 17U);
  EXPECT_TRUE(reply->outcome.done);
  EXPECT_EQ(reply->outcome.why, "confirm within 30 s");
  EXPECT_EQ(reply->outcome.token, 123'456U);
  letter.payload = "{}";
  const auto refused = std::get<Reply>(take(letter));
  EXPECT_EQ(refused.question, 17U);
  EXPECT_FALSE(refused.outcome.done);
  EXPECT_THAT(refused.message.payload, HasSubstr(refused.outcome.why.substr(0, 5)));
}

TEST_F(DeskTest, RefusesRetainedAndLongRequests) {
  const std::string stop = R"({"ask":"stop","who":"ann"})";
  const auto retained = std::get<Reply>(take({Verb::ask, stop, true, "", ""}));
  EXPECT_THAT(retained.message.payload, HasSubstr("Publish it without the retain flag."));
  const auto padded = std::get<Reply>(take(ask(stop + std::string(request_bytes_max, ' '))));
  EXPECT_THAT(padded.message.payload, HasSubstr("longer than 4096 bytes"));
}

TEST_F(DeskTest, AnswersWhereMqtt5AsksForItUnlessThatTopicIsTaken) {
  const auto topic_for = [&](std::string response_topic) {
    const Letter letter{Verb::ask, "{}", false, std::move(response_topic), ""};
    return std::get<Reply>(take(letter)).message.topic;
  };
  EXPECT_EQ(topic_for("phone/ann/answers"), "phone/ann/answers");
  for (const std::string taken : {"home/waterroom/booster/set", "home/waterroom/leak",
                                  "home/waterroom/leak/status", "tidewright/waterroom/ask",
                                  "tidewright-heartbeat", "phone/+/answers", "phone/#", "$SYS/x"}) {
    EXPECT_EQ(topic_for(taken), "tidewright/waterroom/answer") << taken;
  }
}

TEST_F(DeskTest, RemembersTheLastSixtyFour) {
  const auto first = std::get<Ask>(take(ask(R"({"ask":"stop","who":"ann"})")));
  std::uint32_t last = 0;
  for (int i = 0; i < 64; ++i) {
    last = std::get<Ask>(take(ask(R"({"ask":"stop","who":"ann"})"))).ticket;
  }
  EXPECT_FALSE(desk_.reply({first.ticket, true, {}}, "", now, wall));
  EXPECT_TRUE(desk_.reply({last, true, {}}, "", now, wall));
  EXPECT_FALSE(desk_.reply({0, true, {}}, "", now, wall));
}

}  // namespace
}  // namespace tidewright::hub
