// What the pretend sensors send must be what the real door understands: there and back.
#include "tests/pretend_room/payload.hpp"

#include <gtest/gtest.h>

#include "daemon/intake/intake.hpp"

namespace tidewright::pretend {
namespace {

using room::Quantity;

room::Instrument instrument(Quantity quantity) {
  room::Instrument made;
  made.quantity = quantity;
  return made;
}

double there_and_back(const config::Source& source, const room::Instrument& instrument,
                      double value) {
  const std::string sent = payload(source, instrument, value);
  const auto got = intake::decode(source, instrument, 0, {sent, false}, WallClock{}, Instant{});
  const auto* reading = std::get_if<Reading>(&got);
  EXPECT_NE(reading, nullptr) << sent;
  return reading == nullptr ? -1 : reading->value;
}

config::Source switch_words(std::string on, std::string off) {
  config::Source source;
  source.form = config::Form::word;
  source.on_words = {std::move(on)};
  source.off_words = {std::move(off)};
  return source;
}

TEST(Payload, PercentOfAVatIsShownInPercent) {
  config::Source source;
  source.scale = 2;  // 200 L: one percent is 2 L
  EXPECT_EQ(payload(source, instrument(Quantity::level), 78), "39");
  EXPECT_EQ(there_and_back(source, instrument(Quantity::level), 78), 78);
}

TEST(Payload, CalibrationCurveIsReadBackwards) {
  config::Source source;
  source.points = {{10, 0}, {60, 50}, {110, 200}};
  EXPECT_EQ(payload(source, instrument(Quantity::level), 125), "85");
  EXPECT_NEAR(there_and_back(source, instrument(Quantity::level), 125), 125, 1e-9);
}

TEST(Payload, WordsOfTheFileAreUsed) {
  const config::Source source = switch_words("wet", "dry");
  EXPECT_EQ(payload(source, instrument(Quantity::wetness), 1), "wet");
  EXPECT_EQ(there_and_back(source, instrument(Quantity::wetness), 0), 0);
}

TEST(Payload, JsonIsBuiltAroundThePointer) {
  config::Source source;
  source.form = config::Form::json;
  source.pointer = "/energy/power";
  EXPECT_EQ(there_and_back(source, instrument(Quantity::power), 45.3), 45.3);

  source = switch_words("ON", "OFF");
  source.form = config::Form::json;
  source.pointer = "/state";
  EXPECT_EQ(payload(source, instrument(Quantity::feedback), 1), R"({"state":"ON"})");
  EXPECT_EQ(there_and_back(source, instrument(Quantity::feedback), 1), 1);
}

TEST(Payload, CommandIsUnderstoodWithAndWithoutALease) {
  config::Outlet outlet;
  EXPECT_EQ(command(outlet, "ON"), true);
  EXPECT_EQ(command(outlet, "OFF"), false);
  EXPECT_EQ(command(outlet, "on"), std::nullopt);
  outlet.on = R"({"state":"ON","on_time":{seconds}})";
  EXPECT_EQ(command(outlet, R"({"state":"ON","on_time":120})"), true);
  EXPECT_EQ(command(outlet, R"({"state":"ON"})"), std::nullopt);
}

}  // namespace
}  // namespace tidewright::pretend
