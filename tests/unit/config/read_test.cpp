// What the sections of a good file become: units, words, calibration, supervision.
#include <gtest/gtest.h>

#include "config/reader/reader.hpp"

namespace tidewright::config {
namespace {

using namespace std::chrono_literals;

Household household(const std::string& text) {
  const Understood understood = read("room = \"r\"\n" + text);
  for (const Problem& problem : understood.problems) ADD_FAILURE() << problem.what;
  return understood.household.value_or(Household{});
}

constexpr const char* vat = "[vat.pure]\nvolume = \"200 L\"\n";

TEST(Read, ALevelInPercentBecomesLitres) {
  const Household read = household(
      std::string{vat} + R"(level = { topic = "l", unit = "%", reports_every = "60 s" })");
  EXPECT_DOUBLE_EQ(read.sources.at(0).scale, 2);  // 1 % of 200 L
  EXPECT_DOUBLE_EQ(read.room.instruments.at(0).step, 2);
  EXPECT_DOUBLE_EQ(read.room.instruments.at(0).gross_high, 240);  // 120 %
  EXPECT_EQ(read.room.instruments.at(0).id, "pure_level");
}

TEST(Read, AScaleIsAppliedBeforeTheUnit) {
  // Shown in tenths of a degree Fahrenheit: 500 is 50 °F is 10 °C.
  const Household read = household(R"([temperature.cellar]
topic = "t"
unit = "°F"
scale = 0.1
reports_every = "60 s"
step = "0.9 °F")");
  const Source& source = read.sources.at(0);
  EXPECT_NEAR(500 * source.scale + source.offset, 10, 1e-9);
  EXPECT_NEAR(read.room.instruments.at(0).step, 0.5, 1e-9);  // a difference has no offset
}

TEST(Read, CalibrationPointsMeanTheInstrumentsOwnUnit) {
  // A distance from above: the more is shown, the less is in the vat.
  const Household read =
      household(std::string{vat} + R"(level = { topic = "l", unit = "L", reports_every = "60 s", )"
                                   R"(points = [[5, "100 %"], [45.5, "50 gal"], [90, "0 L"]] })");
  const auto& points = read.sources.at(0).points;
  ASSERT_EQ(points.size(), 3u);
  EXPECT_DOUBLE_EQ(points[0].meant, 200);
  EXPECT_DOUBLE_EQ(points[1].shown, 45.5);
  EXPECT_NEAR(points[1].meant, 189.2705892, 1e-9);  // 50 * 3.785411784 L
  EXPECT_DOUBLE_EQ(points[2].meant, 0);
}

TEST(Read, ASensorOnChangeIsSilentForItsCheckIn) {
  const Household read = household(R"([leak.sink]
topic = "leak"
wet = ["true", "ON"]
dry = "false"
unknown = "?"
on_change = true
check_in = "24 h"
availability = { topic = "leak/availability", online = "1", offline = "0" })");
  const room::Instrument& leak = read.room.instruments.at(0);
  EXPECT_EQ(leak.id, "sink");
  EXPECT_TRUE(leak.on_change);
  EXPECT_EQ(leak.reports_every, 24h);
  EXPECT_TRUE(leak.has_availability);
  const Source& source = read.sources.at(0);
  EXPECT_EQ(source.form, Form::word);
  EXPECT_EQ(source.on_words, (std::vector<std::string>{"true", "ON"}));
  EXPECT_EQ(source.off_words, (std::vector<std::string>{"false"}));
  EXPECT_EQ(source.unknown_words, (std::vector<std::string>{"unavailable", "unknown", "?"}));
  ASSERT_TRUE(source.availability.has_value());
  EXPECT_EQ(source.availability->topic, "leak/availability");
  EXPECT_EQ(source.availability->online, "1");
}

TEST(Read, APointerMakesItJson) {
  const Household read = household(R"([leak.sink]
topic = "leak"
pointer = "/water_leak"
time_pointer = "/last_seen"
reports_every = "60 s")");
  EXPECT_EQ(read.sources.at(0).form, Form::json);
  EXPECT_EQ(read.sources.at(0).pointer, "/water_leak");
  EXPECT_EQ(read.sources.at(0).time_pointer, "/last_seen");
}

// One JSON message of one device may carry several instruments, and one availability topic.
TEST(Read, OneMessageMayCarrySeveralInstruments) {
  const Household read = household(R"([temperature.room]
topic = "box"
pointer = "/temperature"
unit = "°C"
reports_every = "60 s"
availability = "box/online"
[leak.floor]
topic = "box"
pointer = "/leak"
reports_every = "60 s"
availability = "box/online")");
  EXPECT_EQ(read.sources.size(), 2u);
}

TEST(Read, APlugHasItsFeedbackAndItsPower) {
  const Household read = household(R"([purifier]
driven_by = "b"
rated = "240 L/day"
water_stops_with = "valve"
[actuator.v]
role = "feed valve"
command = "v/set"
lease_kept_by = "hub"
automation = "valve off"
[actuator.b]
command = "b/set"
on = '{"state": "ON", "countdown": {seconds}}'
off = '{"state": "OFF"}'
lease_kept_by = "device"
lease = "90 s"
feedback = { topic = "b", pointer = "/state" }
power = { topic = "b/power", unit = "kW", reports_every = "30 s" })");
  EXPECT_EQ(read.room.purifier->driven_by, 1);
  ASSERT_EQ(read.room.instruments.size(), 2u);
  const room::Instrument& feedback = read.room.instruments[0];
  EXPECT_EQ(feedback.id, "b_feedback");
  EXPECT_EQ(feedback.subject, 1);
  EXPECT_TRUE(feedback.on_change);
  EXPECT_EQ(read.sources[0].on_words, (std::vector<std::string>{"ON"}));
  EXPECT_DOUBLE_EQ(read.sources[1].scale, 1000);
  EXPECT_EQ(read.room.actuators[1].lease_kind, room::LeaseKind::device);
  EXPECT_EQ(read.room.actuators[0].lease_kind, room::LeaseKind::hub);
  EXPECT_EQ(read.outlets[0].automation, "valve off");
  EXPECT_EQ(read.outlets[1].on, R"({"state": "ON", "countdown": {seconds}})");
}

constexpr const char* purifier = R"([purifier]
rated = "240 L/day"
water_stops_with = "valve"
)";

// A meter says by its unit whether it shows a flow or counts.
TEST(Read, AWaterMeterShowsAFlowOrCounts) {
  const Household read = household(std::string{purifier} + R"(
feed_flow = { topic = "f", unit = "L/min", reports_every = "30 s" }
feed_pressure = { topic = "b", unit = "psi", reports_every = "30 s" }
[purifier.product_flow]
topic = "p"
unit = "L"
scale = 0.01
wraps_at = "10000 L"
reports_every = "30 s")");
  ASSERT_EQ(read.room.instruments.size(), 3u);
  EXPECT_EQ(read.room.instruments[0].quantity, room::Quantity::flow);
  EXPECT_EQ(read.room.instruments[0].place, room::Place::feed);
  EXPECT_DOUBLE_EQ(read.sources[0].scale, 60);
  EXPECT_EQ(read.room.instruments[1].quantity, room::Quantity::water_count);
  EXPECT_EQ(read.room.instruments[1].wraps_at, 10'000);
  EXPECT_DOUBLE_EQ(read.sources[1].scale, 0.01);
  EXPECT_EQ(read.room.instruments[2].quantity, room::Quantity::pressure);
  // NIST Special Publication 811, appendix B.8: 1 psi is 6.894 757 kPa.
  EXPECT_NEAR(read.sources[2].scale, 0.06894757, 1e-9);
}

TEST(Read, ATwinStandsBesideItsFirst) {
  const Household read = household(std::string{vat} + R"(
[vat.pure.level]
topic = "a"
unit = "%"
reports_every = "60 s"
twin = { topic = "b", unit = "L", reports_every = "30 s", agrees_within = "5 L" })");
  ASSERT_EQ(read.room.instruments.size(), 2u);
  const room::Instrument& twin = read.room.instruments[1];
  EXPECT_EQ(twin.id, "pure_level_twin");
  EXPECT_EQ(twin.twin_of, 0);
  EXPECT_EQ(twin.quantity, room::Quantity::level);
  EXPECT_EQ(twin.place, room::Place::vat);
  EXPECT_EQ(twin.agrees_within, 5);
  EXPECT_EQ(read.room.instruments[0].twin_of, no_subject);
  EXPECT_EQ(read.sources[1].topic, "b");
}

TEST(Read, TheTestsOfAReadingAreThoseOfTheFile) {
  const Household read = household(std::string{purifier} + R"(
feed_tds = { topic = "f", unit = "ppm", reports_every = "5 min", median_of = 3, flat_after = "6 h" }
product_tds = { topic = "p", unit = "ppm", reports_every = "5 min" }
[temperature.room]
topic = "t"
unit = "°F"
offset = -1.8
reports_every = "60 s")");
  EXPECT_EQ(read.room.instruments[1].median_of, 3);
  EXPECT_EQ(read.room.instruments[1].flat_after, 6h);
  EXPECT_EQ(read.room.instruments[2].median_of, 1);
  EXPECT_EQ(read.room.instruments[2].flat_after, 24h);
  // 85 °C before its first measurement, set one degree lower by the file.
  ASSERT_TRUE(read.room.instruments[0].power_up);
  EXPECT_NEAR(*read.room.instruments[0].power_up, 84, 1e-9);
}

TEST(Read, RuleDelaysAreThoseOfTheFile) {
  const Household read = household("[rule.leak]\noff_delay = \"20 min\"\n");
  EXPECT_EQ(read.room.rules[room::RuleId::leak].off_delay, 20min);
  EXPECT_EQ(read.room.rules[room::RuleId::leak].on_delay, 0s);  // as the catalogue has it
}

TEST(Read, HoursOfTheDayMaySpanMidnight) {
  const Household read = household(std::string{vat} + R"(
full = { topic = "full", reports_every = "60 s" }
[leak.floor]
topic = "leak"
reports_every = "60 s"
[purifier]
fills = "pure"
driven_by = "b"
rated = "60 gal/day"
water_stops_with = "pump"
start_hours = "22:30-06:00"
[actuator.b]
command = "b/set"
lease_kept_by = "plug_fixed")");
  EXPECT_EQ(read.room.purifier->start_hours->from, 22 * 60 + 30);
  EXPECT_EQ(read.room.purifier->start_hours->to, 6 * 60);
  EXPECT_NEAR(read.room.purifier->rated.value, 9.46352946, 1e-9);  // 60 * 3.785411784 / 24
}

TEST(Read, ASecondDaemonHasItsOwnHeartbeat) {
  EXPECT_EQ(household("base = \"cellar\"").heartbeat, "cellar-heartbeat");
  EXPECT_EQ(household("base = \"cellar\"\nheartbeat = \"beat\"").heartbeat, "beat");
}

TEST(Read, NothingAtAllIsAProblemAndNoCrash) {
  EXPECT_EQ(read("").problems.size(), 1u);
  EXPECT_EQ(read(std::string_view{"\0\xff[[[", 5}).problems.size(), 1u);
}

}  // namespace
}  // namespace tidewright::config
