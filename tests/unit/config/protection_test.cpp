#include "config/protection.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>

#include "config/reader/reader.hpp"

namespace tidewright::config {
namespace {

using namespace std::chrono_literals;

// 240 L/day are 10 L/h of product, and 40 L/h of feed water at the recovery of 25 %.
constexpr const char* whole = R"(
room = "r"
[vat.pure]
volume = "200 L"
start_below = "40 %"
stop_at = "90 %"
level = { topic = "level", unit = "%", step = "1 %", reports_every = "60 s" }
[leak.floor]
topic = "leak"
where = "the floor"
reports_every = "60 s"
[purifier]
fills = "pure"
driven_by = "b"
rated = "240 L/day"
water_stops_with = "valve"
[actuator.b]
command = "b/set"
lease_kept_by = "plug"
lease = "120 s"
)";

Household household(std::string text, const std::string& from = "", const std::string& to = "") {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  if (at != std::string::npos) text.replace(at, from.size(), to);
  const Understood understood = read(text);
  for (const Problem& problem : understood.problems) ADD_FAILURE() << problem.what;
  return understood.household.value_or(Household{});
}

std::optional<Stake> stake(const Protection& from, std::string_view happening) {
  const auto found =
      std::find_if(from.at_stake.begin(), from.at_stake.end(), [&](const Stake& candidate) {
        return candidate.happening.find(happening) != std::string::npos;
      });
  if (found == from.at_stake.end()) return std::nullopt;
  return *found;
}

bool says(const std::vector<Case>& cases, std::string_view happening, std::string_view outcome) {
  return std::any_of(cases.begin(), cases.end(), [&](const Case& one) {
    return one.happening.find(happening) != std::string::npos &&
           one.outcome.find(outcome) != std::string::npos;
  });
}

TEST(Protection, ALeakWithItsOffLostRunsForTheLease) {
  const auto lost = stake(protection(household(whole)), "OFF is lost");
  ASSERT_TRUE(lost);
  EXPECT_EQ(lost->lasting, 120s);
  EXPECT_NEAR(lost->litres.value, 40.0 / 30, 1e-9);  // 40 L/h for 2 min
}

TEST(Protection, ADeadLeakSensorIsFoundAfterThreeReports) {
  const auto dead = stake(protection(household(whole)), "sensor has died");
  ASSERT_TRUE(dead);
  EXPECT_EQ(dead->lasting, 3 * 60s + 120s);
  EXPECT_NEAR(dead->litres.value, 40.0 / 12, 1e-9);  // 40 L/h for 5 min
}

TEST(Protection, ASensorThatSpeaksOnChangeIsBlindForItsWholeCheckIn) {
  const Household on_change = household(
      whole, "reports_every = \"60 s\"\n[purifier]",
      "on_change = true\ncheck_in = \"24 h\"\navailability = \"leak/online\"\n[purifier]");
  const Protection found = protection(on_change);
  EXPECT_TRUE(says(found.not_had, "dies without a word", "1440 min"));
  const auto dead = stake(found, "on change only");
  ASSERT_TRUE(dead);
  EXPECT_EQ(dead->lasting, 24h + 120s);
}

// Three steps of 2 L at the lowest credible 5 L/h: 72 min, and the lease.
TEST(Protection, AStuckGaugeIsFoundAfterThreeOfItsSteps) {
  const auto stuck = stake(protection(household(whole)), "gauge sticks");
  ASSERT_TRUE(stuck);
  EXPECT_EQ(stuck->lasting, 72min + 120s);
  EXPECT_NEAR(stuck->litres.value, 10.0 * 74 / 60, 1e-9);
}

TEST(Protection, MarksAreSecondsApartAtTheRatedFlow) {
  const std::vector<Rise> rises = protection(household(whole)).rises;
  ASSERT_EQ(rises.size(), 2u);
  EXPECT_EQ(rises[0].from.name, "start_below");
  EXPECT_EQ(rises[0].to.name, "stop_at");
  EXPECT_EQ(rises[0].at_rated_flow, 10h);  // 100 L at 10 L/h
  EXPECT_EQ(rises[1].to.name, "volume");
  EXPECT_EQ(rises[1].at_rated_flow, 2h);  // 20 L at 10 L/h
}

TEST(Protection, WhatIsNotInstalledIsSaid) {
  const Protection found = protection(household(whole));
  EXPECT_TRUE(says(found.not_had, "does not obey", "no feedback"));
  EXPECT_TRUE(says(found.not_had, "too little", "no high-high switch"));
  EXPECT_TRUE(says(found.not_had, "resin is spent", "not measured"));
  EXPECT_TRUE(says(found.not_had, "freezes", "no thermometer"));
  EXPECT_TRUE(says(found.not_had, "daemon itself fails", "float valve"));
}

TEST(Protection, AStoppedPumpDoesNotStopTheWater) {
  const Protection found = protection(household(whole, "\"valve\"", "\"nothing\""));
  EXPECT_TRUE(says(found.not_had, "the booster pump is off", "close the feed cock"));
  EXPECT_FALSE(says(found.had, "the booster pump is off", "stops the water"));
}

TEST(Protection, AlarmsArePossibleByWhatIsInstalled) {
  const Protection found = protection(household(whole));
  const auto has = [](const std::vector<std::string>& names, const char* name) {
    return std::find(names.begin(), names.end(), name) != names.end();
  };
  EXPECT_TRUE(has(found.alarms, "leak"));
  EXPECT_TRUE(has(found.alarms_not, "vat_high_high"));
  EXPECT_TRUE(has(found.alarms_not, "pump_dry"));
  EXPECT_EQ(found.alarms.size() + found.alarms_not.size(), room::rule_count);
}

TEST(Protection, IsReadAsSentences) {
  const Household room = household(whole);
  const std::string text = words(protection(room), room);
  EXPECT_TRUE(text.starts_with("The file is good: room r with 2 instruments and 1 actuator.\n"));
  EXPECT_NE(text.find("  If the floor gets wet: the booster pump goes off at once and stays off"),
            std::string::npos);
  EXPECT_NE(text.find("start_below 80 L to stop_at 180 L: 36000 s (10 h)"), std::string::npos);
}

TEST(Protection, AWaterMeterSeesFlowWithEverythingOffWhereAValveStopsIt) {
  const std::string meter =
      "rated = \"240 L/day\"\nfeed_flow = { topic = \"f\", unit = \"L/h\", reports_every = \"30 "
      "s\" }";
  const Household with_valve = household(whole, "rated = \"240 L/day\"", meter);
  EXPECT_TRUE(says(protection(with_valve).had, "everything is off", "as of a leak"));
  Household with_pump = with_valve;
  with_pump.room.purifier->water_stops_with = room::WaterStopsWith::pump;
  EXPECT_TRUE(says(protection(with_pump).not_had, "everything is off", "nobody is told"));
}

}  // namespace
}  // namespace tidewright::config
