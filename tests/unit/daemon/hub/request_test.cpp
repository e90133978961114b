#include "daemon/hub/request.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "daemon/hub/request_kinds.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright::hub {
namespace {

using testing::HasSubstr;

config::Household household() {
  config::Household made;
  made.room = support::minimal_room();
  return made;
}

Request ask(std::string_view json) { return read_request(Verb::ask, json, household()); }
Request tell(std::string_view json) { return read_request(Verb::tell, json, household()); }
std::string refusal(const Request& request) {
  const auto* why = std::get_if<std::string>(&request.content);
  return why == nullptr ? "understood" : *why;
}

TEST(ReadRequest, UnderstandsEveryAsk) {
  const auto reset = std::get<Ask>(ask(R"({"ask":"reset","alarm":"leak","who":"ann"})").content);
  EXPECT_EQ(reset.kind, AskKind::reset);
  EXPECT_EQ(reset.alarm, room::RuleId::leak);
  EXPECT_EQ(reset.who.view(), "ann");

  const auto confirm =
      std::get<Ask>(ask(R"({"ask":"confirm","alarm":"leak","token":123456,"who":"ann"})").content);
  EXPECT_EQ(confirm.kind, AskKind::confirm);
  EXPECT_EQ(confirm.token, 123'456U);

  const auto acknowledge = std::get<Ask>(
      ask(R"({"ask":"acknowledge","alarm":"resin_breakthrough","occurrence":7,"who":"ann"})")
          .content);
  EXPECT_EQ(acknowledge.alarm, room::RuleId::resin_breakthrough);
  EXPECT_EQ(acknowledge.occurrence, 7U);

  const auto shelve =
      std::get<Ask>(ask(R"({"ask":"shelve","alarm":"resin_breakthrough","minutes":60,"who":"ann",)"
                        R"("why":"resin is on its way"})")
                        .content);
  EXPECT_EQ(shelve.why.view(), "resin is on its way");
  EXPECT_EQ(shelve.kind, AskKind::shelve);
  EXPECT_EQ(shelve.lasting, std::chrono::hours{1});

  const auto start = std::get<Ask>(
      ask(R"({"ask":"start","what":"make_water","minutes":1.5,"who":"ann"})").content);
  EXPECT_EQ(start.kind, AskKind::start);
  EXPECT_EQ(start.lasting, std::chrono::seconds{90});

  const auto bypass =
      std::get<Ask>(ask(R"({"ask":"bypass","cause":"frost","minutes":60,"who":"ann",)"
                        R"("why":"the probe lies on the floor"})")
                        .content);
  EXPECT_EQ(bypass.kind, AskKind::bypass);
  EXPECT_EQ(bypass.cause, room::CauseId::frost);
  EXPECT_EQ(bypass.lasting, std::chrono::hours{1});
  EXPECT_EQ(bypass.why.view(), "the probe lies on the floor");
  const auto confirm_bypass = std::get<Ask>(
      ask(R"({"ask":"confirm_bypass","cause":"leak_wet","token":123456,"who":"ann"})").content);
  EXPECT_EQ(confirm_bypass.kind, AskKind::confirm_bypass);
  EXPECT_EQ(confirm_bypass.cause, room::CauseId::leak_wet);
  EXPECT_EQ(confirm_bypass.token, 123'456U);
  EXPECT_EQ(std::get<Ask>(ask(R"({"ask":"end_bypass","cause":"frost","who":"ann"})").content).kind,
            AskKind::end_bypass);
  const auto test_lease =
      std::get<Ask>(ask(R"({"ask":"test_lease","actuator":"booster","who":"ann"})").content);
  EXPECT_EQ(test_lease.kind, AskKind::test_lease);
  EXPECT_EQ(test_lease.actuator, 0);

  EXPECT_EQ(std::get<Ask>(ask(R"({"ask":"stop","who":"ann"})").content).kind, AskKind::stop);
  EXPECT_EQ(std::get<Ask>(ask(R"({"ask":"test","who":"ann"})").content).kind, AskKind::test);
  EXPECT_EQ(
      std::get<Ask>(ask(R"({"ask":"unshelve","alarm":"resin_breakthrough","who":"a"})").content)
          .kind,
      AskKind::unshelve);
}

TEST(ReadRequest, UnderstandsEveryTell) {
  const std::string product = household().room.instruments[support::product].id;
  const auto measured = std::get<Tell>(tell(R"({"tell":"measured","instrument":")" + product +
                                            R"(","value":0,"unit":"ppm","who":"ann"})")
                                           .content);
  EXPECT_EQ(measured.kind, TellKind::measured);
  EXPECT_EQ(measured.instrument, support::product);
  EXPECT_EQ(measured.value, 0);

  const std::string level = household().room.instruments[support::level].id;
  const auto half = std::get<Tell>(tell(R"({"tell":"measured","instrument":")" + level +
                                        R"(","value":50,"unit":"%","who":"ann"})")
                                       .content);
  EXPECT_EQ(half.value, 100);  // half of 200 L

  EXPECT_EQ(std::get<Tell>(tell(R"({"tell":"rotated","who":"ann"})").content).kind,
            TellKind::rotated);
  EXPECT_EQ(std::get<Tell>(tell(R"({"tell":"replaced","who":"ann"})").content).kind,
            TellKind::replaced);
  const std::string floor = household().room.instruments[support::floor].id;
  const auto tested = std::get<Tell>(
      tell(R"({"tell":"tested","instrument":")" + floor + R"(","who":"ann"})").content);
  EXPECT_EQ(tested.kind, TellKind::tested);
  EXPECT_EQ(tested.instrument, support::floor);
}

TEST(ReadRequest, CountsASupplyOfTheHousehold) {
  config::Household home;
  home.room = support::full_room();
  const auto read = [&](const std::string& rest) {
    return read_request(Verb::tell, R"({"tell":"stocked","who":"ann",)" + rest + "}", home);
  };
  const auto stocked = std::get<Tell>(read(R"("supply":"salt","value":20.5)").content);
  EXPECT_EQ(stocked.kind, TellKind::stocked);
  EXPECT_EQ(stocked.supply, 0);
  EXPECT_EQ(stocked.value, 20.5);
  EXPECT_THAT(refusal(read(R"("supply":"sale","value":1)")),
              HasSubstr(R"(There is no supply "sale". Did you mean "salt"?)"));
  EXPECT_THAT(refusal(read(R"("supply":"salt","value":-1)")), HasSubstr(R"("value" is -1.)"));
  EXPECT_THAT(refusal(read(R"("supply":"salt")")), HasSubstr(R"("value" is missing.)"));
  EXPECT_THAT(refusal(tell(R"({"tell":"stocked","supply":"salt","value":1,"who":"ann"})")),
              HasSubstr("the household's file has no [supply.<name>]"));
  EXPECT_EQ(std::get<Tell>(tell(R"({"tell":"cleaned","who":"ann"})").content).kind,
            TellKind::cleaned);
}

TEST(ReadRequest, RepeatsWhatItWasAbout) {
  const Request refused = ask(R"({"ask":"resett","alarm":"leak","id":"button 3","who":"ann"})");
  EXPECT_EQ(refused.about.what, "resett");
  EXPECT_EQ(refused.about.id, "button 3");
  EXPECT_THAT(refusal(refused), HasSubstr(R"("ask" is "resett", which is not known.)"));
  EXPECT_THAT(refusal(refused), HasSubstr(R"(Did you mean "reset"?)"));
}

struct Refusal {
  Verb verb;
  std::string json;
  std::string says;
};

TEST(ReadRequest, SaysWhatWasFoundAndWhatWasExpected) {
  const std::vector<Refusal> table{
      {Verb::ask, "", "not one JSON object"},
      {Verb::ask, "reset leak", "not one JSON object"},
      {Verb::ask, "[]", "not one JSON object"},
      {Verb::ask, R"({"ask":"stop","ask":"start","who":"ann"})", "not one JSON object"},
      {Verb::ask, R"({"ask":"stop","who":{"a":1,"a":2}})", "not one JSON object"},
      {Verb::ask, R"({"tell":"rotated","who":"ann"})", R"("ask" is missing.)"},
      {Verb::ask, R"({"ask":5,"who":"ann"})", R"("ask" is 5. Expected a text)"},
      {Verb::ask, R"({"ask":"reset","who":"ann"})",
       R"("alarm" is missing. "reset" needs: alarm, who.)"},
      {Verb::ask, R"({"ask":"stop"})", R"("who" is missing. "stop" needs: who.)"},
      {Verb::ask, R"({"ask":"reset","alarm":"leek","who":"ann"})",
       R"(There is no alarm "leek" in this room. Did you mean "leak"? The alarms are: leak, )"},
      {Verb::ask, R"({"ask":"start","minuts":5,"who":"ann"})",
       R"("minuts" is not a field of "start". Did you mean "minutes"?)"},
      {Verb::ask, R"({"ask":"stop","alarm":"leak","who":"ann"})", R"("alarm" is not a field)"},
      {Verb::ask, R"({"ask":"start","minutes":"5","who":"ann"})",
       R"("minutes" is "5". Expected a number of minutes from 1 to 10080, without quotation)"},
      {Verb::ask, R"({"ask":"start","minutes":-5,"who":"ann"})", R"("minutes" is -5.)"},
      {Verb::ask, R"({"ask":"start","minutes":1e300,"who":"ann"})", R"("minutes" is 1e+300.)"},
      {Verb::ask, R"({"ask":"start","what":"heater","who":"ann"})",
       R"(There is no "heater" to start or stop. Known are: make_water, )"},
      {Verb::ask, R"({"ask":"confirm","alarm":"leak","token":1.5,"who":"ann"})",
       R"("token" is 1.5. Expected a whole number.)"},
      {Verb::ask, R"({"ask":"acknowledge","alarm":"leak","occurrence":true,"who":"ann"})",
       R"("occurrence" is true.)"},
      {Verb::ask, R"({"ask":"stop","who":""})", R"("who" is "". Expected a text of 1 to 31)"},
      {Verb::ask, R"({"ask":"stop","who":"a\nb"})", R"(Expected a text of 1 to 31)"},
      {Verb::ask, R"({"ask":"stop","who":"a name that is too long for the book"})",
       R"(Expected a text of 1 to 31)"},
      {Verb::ask, R"({"ask":"bypass","cause":"frost","who":"ann"})",
       R"("why" is missing. "bypass" needs: cause, why, who.)"},
      {Verb::ask, R"({"ask":"bypass","cause":"frosty","why":"x","who":"ann"})",
       R"(There is no cause "frosty". Did you mean "frost"? The causes are: leak_wet, )"},
      {Verb::ask, R"({"ask":"test_lease","actuator":"boster","who":"ann"})",
       R"(There is no actuator "boster". Did you mean "booster"? The actuators are: booster.)"},
      {Verb::tell, R"({"tell":"tested","instrument":"flor","who":"ann"})",
       R"(There is no instrument "flor".)"},
      {Verb::tell, R"({"tell":"tested","who":"ann"})", R"("instrument" is missing.)"},
      {Verb::tell, R"({"tell":"dosed","who":"ann"})", R"("tell" is "dosed", which is not known.)"},
  };
  for (const Refusal& row : table) {
    EXPECT_THAT(refusal(read_request(row.verb, row.json, household())), HasSubstr(row.says))
        << row.json;
  }
}

TEST(ReadRequest, AHandMeasurementOfALevelSaysItsUnit) {
  const auto& instruments = household().room.instruments;
  const auto measured = [&](room::InstrumentIndex i, const std::string& rest) {
    return refusal(tell(R"({"tell":"measured","who":"ann","instrument":")" + instruments[i].id +
                        "\"," + rest + "}"));
  };
  EXPECT_THAT(measured(support::product, R"("value":1,"unit":"uS/cm")"),
              HasSubstr(R"("unit" is "uS/cm". Expected "ppm".)"));
  EXPECT_THAT(measured(support::product, R"("value":"1","unit":"ppm")"),
              HasSubstr(R"("value" is "1". Expected a number)"));
  EXPECT_EQ(measured(support::product, R"("value":1)"), "understood");
  EXPECT_THAT(measured(support::level, R"("value":45)"),
              HasSubstr(R"("unit" is missing. Expected "L" or "%".)"));
  EXPECT_THAT(measured(support::floor, R"("value":0,"unit":"ppm")"),
              HasSubstr("cannot be measured by hand"));
}

// Every kind of request has its row in the docs: `| reset | alarm | – |`.
TEST(ReadRequest, EveryFieldStandsInTheDocs) {
  std::ifstream file(TIDEWRIGHT_SOURCE_DIR "/docs/ask-and-tell.md");
  std::stringstream text;
  text << file.rdbuf();
  const auto cell = [](const std::vector<std::string_view>& names) {
    std::string joined;
    for (const auto name : names) {
      if (!joined.empty()) joined += ", ";
      joined += "`" + std::string(name) + "`";
    }
    return joined.empty() ? std::string("-") : joined;
  };
  for (const Verb verb : {Verb::ask, Verb::tell}) {
    for (const RequestKind& kind : request_kinds(verb)) {
      const std::string row = "| `" + std::string(kind.name) + "` | " + cell(kind.required) +
                              " | " + cell(kind.optional) + " |";
      EXPECT_THAT(text.str(), HasSubstr(row));
    }
  }
}

}  // namespace
}  // namespace tidewright::hub
