#include "daemon/intake/intake.hpp"

#include <gtest/gtest.h>

#include <set>

#include "tests/support/garbage.hpp"

namespace tidewright::intake {
namespace {

using room::Instrument;
using room::Quantity;
using support::Listens;

const Instant now{std::chrono::seconds{1'800'000'000}};  // 2027-01-15T08:00:00Z
const WallClock wall{Duration{0}, std::chrono::minutes{60}};

Instrument instrument(Quantity quantity) {
  Instrument made;
  made.id = "probe";
  made.quantity = quantity;
  return made;
}

config::Source leak_words(config::Form form) {
  config::Source source;
  source.form = form;
  source.on_words = {"wet", "true"};
  source.off_words = {"dry", "false"};
  return source;
}

std::variant<Reading, Refused> number(std::string_view payload, const config::Source& source = {}) {
  return decode(source, instrument(Quantity::dissolved_solids), 3, {payload}, wall, now);
}

double value(const std::variant<Reading, Refused>& decoded) {
  const auto* reading = std::get_if<Reading>(&decoded);
  return reading != nullptr ? reading->value : -999;
}

std::variant<Reading, Refused> listen(Listens listens, std::string_view payload) {
  config::Source source;
  switch (listens) {
    case Listens::for_a_number:
      return decode({}, instrument(Quantity::temperature), 0, {payload}, wall, now);
    case Listens::for_a_word:
      return decode(leak_words(config::Form::word), instrument(Quantity::wetness), 0, {payload},
                    wall, now);
    case Listens::for_json:
      source.form = config::Form::json;
      source.pointer = "/t";
      return decode(source, instrument(Quantity::temperature), 0, {payload}, wall, now);
    case Listens::for_json_word:
      source = leak_words(config::Form::json);
      source.pointer = "/leak";
      return decode(source, instrument(Quantity::wetness), 0, {payload}, wall, now);
    case Listens::for_senml:
      source.form = config::Form::senml;
      return decode(source, instrument(Quantity::dissolved_solids), 0, {payload}, wall, now);
  }
  return Refused::empty;
}

TEST(Intake, RefusesEveryGarbagePayloadForItsOwnReason) {
  const auto& table = support::garbage();
  EXPECT_GE(table.size(), 40U);
  for (const auto& row : table) {
    const auto decoded = listen(row.listens, row.payload);
    const auto* refused = std::get_if<Refused>(&decoded);
    ASSERT_NE(refused, nullptr) << row.payload << " was taken for a measurement";
    EXPECT_EQ(words(*refused), words(row.because)) << row.payload.substr(0, 80);
  }
}

TEST(Intake, EveryReasonOccursInTheGarbageTableOrBelow) {
  std::set<Refused> seen{Refused::outside_calibration};
  for (const auto& row : support::garbage()) seen.insert(row.because);
  EXPECT_EQ(seen.size(), refused_count);
}

TEST(Intake, ReadsDecimalNumbersWithAPoint) {
  EXPECT_EQ(value(number("21.5")), 21.5);
  EXPECT_EQ(value(number("-3")), -3);
  EXPECT_EQ(value(number("+4.25")), 4.25);
  EXPECT_EQ(value(number("2e1")), 20);
  EXPECT_EQ(value(number("007")), 7);
  EXPECT_EQ(value(number(" 12\r\n")), 12);
  EXPECT_EQ(value(number("0")), 0);
  EXPECT_EQ(std::get<Reading>(number("0")).instrument, 3);
}

TEST(Intake, ReadsNumbersOfJsonAlsoWhenTheyAreWrittenAsText) {
  config::Source source;
  source.form = config::Form::json;
  source.pointer = "/ENERGY/Power";
  EXPECT_EQ(value(number(R"({"ENERGY":{"Power":31,"Total":2.5}})", source)), 31);
  EXPECT_EQ(value(number(R"({"ENERGY":{"Power":"31.5"}})", source)), 31.5);
  EXPECT_EQ(value(number(R"({"ENERGY":{"Power":-1}})", source)), -1);
}

TEST(Intake, ConvertsByScaleAndOffsetOnce) {
  config::Source fahrenheit;
  fahrenheit.scale = 5.0 / 9.0;
  fahrenheit.offset = -32 * 5.0 / 9.0;
  // 212 degrees Fahrenheit is 100 degrees Celsius: the definition of the scales.
  EXPECT_NEAR(value(number("212", fahrenheit)), 100, 1e-9);
  EXPECT_NEAR(value(number("-40", fahrenheit)), -40, 1e-9);
}

TEST(Intake, CalibratesBetweenPointsAndNeverBeyondThem) {
  config::Source source;
  source.points = {{10, 0}, {20, 100}, {40, 200}};
  EXPECT_EQ(value(number("10", source)), 0);
  EXPECT_EQ(value(number("15", source)), 50);  // halfway of the first stretch
  EXPECT_EQ(value(number("20", source)), 100);
  EXPECT_EQ(value(number("30", source)), 150);  // halfway of the second
  EXPECT_EQ(value(number("40", source)), 200);
  EXPECT_EQ(std::get<Refused>(number("9.99", source)), Refused::outside_calibration);
  EXPECT_EQ(std::get<Refused>(number("40.01", source)), Refused::outside_calibration);
}

// -127 °C is what drivers of one-wire thermometers say of a broken wire (from memory); it is
// -196.6 °F.
TEST(Intake, FailureValuesAreThoseOfASensorThatSpeaksDegreesItself) {
  const auto thermometer = instrument(Quantity::temperature);
  config::Source raw;
  EXPECT_EQ(std::get<Refused>(decode(raw, thermometer, 0, {"-127"}, wall, now)),
            Refused::failure_value);
  raw.scale = 5.0 / 9;
  raw.offset = -160.0 / 9;
  EXPECT_EQ(std::get<Refused>(decode(raw, thermometer, 0, {"-196.6"}, wall, now)),
            Refused::failure_value);
  raw = {};
  raw.scale = 0.1;
  EXPECT_NEAR(value(decode(raw, thermometer, 0, {"-127"}, wall, now)), -12.7, 1e-9);
  EXPECT_EQ(value(decode({}, thermometer, 0, {"85"}, wall, now)), 85);  // core/signal judges it
  EXPECT_EQ(value(number("-127")), -127);
}

TEST(Intake, TakesWordsOfTheFileForTwoValuedInstruments) {
  const auto wet = instrument(Quantity::wetness);
  const auto words_source = leak_words(config::Form::word);
  EXPECT_EQ(value(decode(words_source, wet, 0, {"wet"}, wall, now)), 1);
  EXPECT_EQ(value(decode(words_source, wet, 0, {"dry\n"}, wall, now)), 0);
  auto json = leak_words(config::Form::json);
  json.pointer = "/leak";
  EXPECT_EQ(value(decode(json, wet, 0, {R"({"leak":true})"}, wall, now)), 1);
  EXPECT_EQ(value(decode(json, wet, 0, {R"({"leak":"dry"})"}, wall, now)), 0);
  auto with_unknown = words_source;
  with_unknown.unknown_words = {"?"};
  EXPECT_EQ(std::get<Refused>(decode(with_unknown, wet, 0, {"?"}, wall, now)),
            Refused::says_unknown);
}

// Availability.

TEST(Intake, ReadsAvailabilityByItsTwoWords) {
  const config::AvailabilityTopic topic{"home/leak/status", "online", "offline"};
  EXPECT_TRUE(std::get<Availability>(decode(topic, 4, "online")).online);
  const auto offline = std::get<Availability>(decode(topic, 4, " offline\n"));
  EXPECT_FALSE(offline.online);
  EXPECT_EQ(offline.instrument, 4);
  EXPECT_EQ(std::get<Refused>(decode(topic, 4, "")), Refused::empty);
  EXPECT_EQ(std::get<Refused>(decode(topic, 4, "ONLINE")), Refused::unknown_word);
}

// Arrival and the source's own time.

Reading dated(std::string_view payload, bool unknown_age, WallClock clock = wall) {
  config::Source source;
  source.form = config::Form::json;
  source.pointer = "/v";
  source.time_pointer = "/at";
  return std::get<Reading>(decode(source, instrument(Quantity::dissolved_solids), 0,
                                  {payload, unknown_age}, clock, now));
}

TEST(Intake, TellsALiveMessageFromOneOfUnknownAge) {
  config::Source source;
  const auto probe = instrument(Quantity::dissolved_solids);
  const auto arrival = [&](bool unknown_age) {
    return std::get<Reading>(decode(source, probe, 0, {"5", unknown_age}, wall, now)).arrival;
  };
  EXPECT_EQ(arrival(false), Arrival::live);
  EXPECT_EQ(arrival(true), Arrival::retained);
}

TEST(Intake, ARetainedMessageWithItsOwnTimeIsDated) {
  const Reading reading = dated(R"({"v":5,"at":"2027-01-15T07:59:30Z"})", true);
  EXPECT_EQ(reading.arrival, Arrival::dated);
  EXPECT_EQ(reading.taken, now - std::chrono::seconds{30});
}

TEST(Intake, ALiveMessageKeepsItsTimeAndOneOfLongAgoIsDated) {
  const Reading fresh = dated(R"({"v":5,"at":1799999990.5})", false);
  EXPECT_EQ(fresh.arrival, Arrival::live);
  EXPECT_EQ(fresh.taken, now - Duration{9'500});
  const Reading stored = dated(R"({"v":5,"at":"2027-01-15T06:00:00Z"})", false);
  EXPECT_EQ(stored.arrival, Arrival::dated);
}

TEST(Intake, ATimeThatCannotBeMakesNoDate) {
  for (const char* payload : {R"({"v":5})", R"({"v":5,"at":null})", R"({"v":5,"at":"noon"})",
                              R"({"v":5,"at":"2027-01-15T09:00:00Z"})", R"({"v":5,"at":0})",
                              R"({"v":5,"at":1e300})", R"({"v":5,"at":[1]})"}) {
    EXPECT_EQ(dated(payload, true).arrival, Arrival::retained) << payload;
    EXPECT_EQ(dated(payload, true).taken, long_ago) << payload;
  }
  // A source whose clock runs a little ahead of ours is taken at now.
  EXPECT_EQ(dated(R"({"v":5,"at":"2027-01-15T08:00:20Z"})", true).taken, now);
}

TEST(Intake, TheRoomsLineOfTimeIsNotTheWallClock) {
  const WallClock ahead{std::chrono::hours{1}, std::chrono::minutes{0}};
  EXPECT_EQ(dated(R"({"v":5,"at":"2027-01-15T09:00:00Z"})", true, ahead).taken, now);
}

}  // namespace
}  // namespace tidewright::intake
