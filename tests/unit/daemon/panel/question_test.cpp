// What can be asked and told, and that it is the very request that MQTT would bring: the desk reads
// each of them.
#include "daemon/panel/question.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "daemon/hub/request_kinds.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright::panel {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

const Instant now{std::chrono::seconds{1'772'346'600}};

config::Household household_of(const room::Room& room) {
  config::Household household;
  household.room = room;
  return household;
}

std::vector<std::string> paths(const room::Room& room) {
  std::vector<std::string> all;
  for (const Question& question : questions(room)) all.push_back(question.path);
  return all;
}

Question at(const room::Room& room, const std::string& path) {
  for (Question& question : questions(room)) {
    if (question.path == path) return question;
  }
  ADD_FAILURE() << "no question " << path;
  return {};
}

// As a person fills it in.
Form filled_in(const Question& question) {
  if (!question.unit.empty()) return {{"value", "1,5"}};
  if (question.minutes.empty() || question.minutes.front() == 0) return {};
  return {{"minutes", std::to_string(question.minutes.front())}};
}

TEST(PanelQuestions, EachIsARequestThatTheDeskTakes) {
  const room::Room room = support::whole_room();
  const config::Household household = household_of(room);
  hub::Desk desk(household, [] { return 123'456U; });
  for (const bool us : {false, true}) {
    config::Panel look;
    look.us_units = us;
    for (const Question& question : questions(room)) {
      const hub::Letter made = letter(question, filled_in(question), "ann", Style(look));
      const auto taken = desk.take(made, now, {});
      const auto* reply = std::get_if<hub::Reply>(&taken);
      EXPECT_EQ(reply, nullptr) << made.payload << " " << reply->outcome.why;
    }
  }
}

TEST(PanelQuestions, EveryKindIsOfferedButThoseThatNeedAReason) {
  const room::Room room = support::whole_room();
  std::set<std::string_view> offered;
  for (const Question& question : questions(room)) offered.insert(question.what);
  for (const Question& question : answers_to("leak", "")) offered.insert(question.what);
  std::set<std::string_view> rest;
  for (const hub::Verb verb : {hub::Verb::ask, hub::Verb::tell}) {
    for (const hub::RequestKind& kind : hub::request_kinds(verb)) {
      if (!offered.contains(kind.name)) rest.insert(kind.name);
    }
  }
  EXPECT_THAT(rest, ElementsAre("bypass", "confirm_bypass", "end_bypass", "shelve", "test_lease",
                                "unshelve"));
}

TEST(PanelQuestions, AreOfWhatTheRoomHas) {
  EXPECT_THAT(paths(support::minimal_room()),
              ElementsAre("start/make_water", "stop/make_water", "cleaned", "tested/floor",
                          "measured/level", "measured/product", "measured/feed", "measured/warmth",
                          "test"));
  EXPECT_THAT(paths(support::attended_room()), Not(Contains("cleaned")));
  EXPECT_THAT(at(support::attended_room(), "start/make_water").minutes, Not(Contains(0)))
      << "nothing would end it";
  EXPECT_THAT(at(support::minimal_room(), "start/make_water").minutes, Contains(0));
  const auto whole = paths(support::whole_room());
  EXPECT_THAT(whole, Contains("stocked/salt"));
  EXPECT_EQ(std::set<std::string>(whole.begin(), whole.end()).size(), whole.size());
}

TEST(PanelQuestions, KeepToTheirGroup) {
  std::vector<Word> groups;
  for (const Question& question : questions(support::whole_room())) {
    if (groups.empty() || groups.back() != question.group) groups.push_back(question.group);
  }
  EXPECT_EQ(std::set<Word>(groups.begin(), groups.end()).size(), groups.size());
}

std::string request(const Question& question, const Form& form, bool us = false) {
  config::Panel look;
  look.us_units = us;
  return letter(question, form, "ann", Style(look)).payload;
}

TEST(PanelQuestions, AreWrittenAsOverMqtt) {
  const room::Room room = support::whole_room();
  EXPECT_EQ(request(at(room, "measured/product"), {{"value", "0,4"}}),
            R"({"tell":"measured","who":"ann","instrument":"product","value":0.4,"unit":"ppm"})");
  EXPECT_EQ(request(at(room, "stocked/salt"), {{"value", "20"}}),
            R"({"tell":"stocked","who":"ann","supply":"salt","value":20})");
  EXPECT_EQ(request(at(room, "stop/make_water"), {{"minutes", "60"}}),
            R"({"ask":"stop","who":"ann","minutes":60})");
  EXPECT_EQ(request(at(room, "stop/make_water"), {}), R"({"ask":"stop","who":"ann"})");
  const auto of_leak = answers_to("leak", "Water on the floor");
  EXPECT_EQ(request(of_leak[0], {{"occurrence", "3"}}),
            R"({"ask":"acknowledge","who":"ann","alarm":"leak","occurrence":3})");
  EXPECT_EQ(request(of_leak[1], {}), R"({"ask":"reset","who":"ann","alarm":"leak"})");
  EXPECT_EQ(request(of_leak[2], {{"token", "123456"}}),
            R"({"ask":"confirm","who":"ann","alarm":"leak","token":123456})");
}

// Else a form that lost it would quiet whatever came since.
TEST(PanelQuestions, NothingIsAcknowledgedWithoutItsOccurrence) {
  const config::Household household = household_of(support::minimal_room());
  hub::Desk desk(household, [] { return 123'456U; });
  const hub::Letter made = letter(answers_to("leak", "")[0], {}, "ann", Style(config::Panel{}));
  const auto taken = desk.take(made, now, {});
  ASSERT_TRUE(std::holds_alternative<hub::Reply>(taken)) << made.payload;
  EXPECT_THAT(std::get<hub::Reply>(taken).outcome.why, HasSubstr("\"occurrence\" is \"\""));
}

// What is typed cannot become another field.
TEST(PanelQuestions, WhatIsTypedStaysInItsField) {
  const std::string evil = R"(1,"who":"bob")";
  EXPECT_EQ(request(at(support::whole_room(), "stocked/salt"), {{"value", evil}, {"who", "bob"}}),
            R"({"tell":"stocked","who":"ann","supply":"salt","value":"1,\"who\":\"bob\""})");
}

// NIST SP 811, B.8: 68 degrees Fahrenheit are 20 degrees Celsius; 1 US gallon is 3.785412 L.
TEST(PanelQuestions, AreAskedInTheHouseholdsUnitsAndToldInCores) {
  const room::Room room = support::whole_room();
  EXPECT_THAT(request(at(room, "measured/warmth"), {{"value", "68"}}, true),
              HasSubstr(R"("value":20,"unit":"°C")"));
  EXPECT_THAT(request(at(room, "measured/level"), {{"value", "10"}}, true),
              HasSubstr(R"("value":37.8541,"unit":"L")"));
  EXPECT_THAT(request(at(room, "measured/level"), {{"value", "ten"}}, true),
              HasSubstr(R"("value":"ten")"));
}

}  // namespace
}  // namespace tidewright::panel
