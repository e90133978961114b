// The table of keys is right in itself, and agrees with the room's own defaults.
#include "config/reader/keys.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "config/reader/reader.hpp"
#include "config/reader/value.hpp"

namespace tidewright::config {
namespace {

TEST(Keys, StandTogetherByPartAndOnce) {
  std::set<std::pair<Part, std::string_view>> seen;
  Part before = Part::file;
  for (const Key& key : keys()) {
    EXPECT_TRUE(seen.emplace(key.part, key.name).second) << key.name;
    EXPECT_GE(key.part, before) << key.name;
    before = key.part;
  }
}

TEST(Keys, EachHasAHelpThatIsASentence) {
  for (const Key& key : keys()) {
    ASSERT_FALSE(key.help.empty()) << key.name;
    EXPECT_TRUE(key.help.ends_with('.')) << key.name << ": " << key.help;
  }
}

TEST(Keys, NoneIsBothRequiredAndHasADefault) {
  for (const Key& key : keys()) {
    EXPECT_FALSE(key.need == Need::required && !key.standard.empty()) << key.name;
  }
}

TEST(Keys, EveryDefaultIsAGoodValueOfItsOwnRow) {
  for (const Key& key : keys()) {
    if (key.standard.empty()) continue;
    EXPECT_TRUE(standard_value(key).has_value()) << key.name;
  }
}

TEST(Keys, EveryLimitAndExampleIsAGoodValueOfItsOwnRow) {
  for (const Key& key : keys()) {
    const bool quantity = key.kind >= Kind::volume && key.kind <= Kind::power;
    for (const std::string_view text : {key.low, key.high, key.example}) {
      if (!quantity || text.empty()) continue;
      Node node;
      node.kind = Node::Kind::text;
      node.text = std::string{text};
      Problems none;
      EXPECT_TRUE(read_value(key, node, none).has_value()) << key.name << " " << text;
    }
  }
}

TEST(Keys, EveryHeirIsAKey) {
  for (const Heir& heir : heirs()) {
    EXPECT_TRUE(std::any_of(keys().begin(), keys().end(), [&](const Key& key) {
      return key.name == heir.key;
    })) << heir.key;
    EXPECT_FALSE(std::any_of(keys().begin(), keys().end(), [&](const Key& key) {
      return key.name == heir.name;
    })) << heir.name;
  }
}

// The rooms that tests build by hand have the defaults of the file.
TEST(Keys, DefaultsAreThoseOfTheRoom) {
  const Understood understood = read(R"(
room = "r"
[purifier]
driven_by = "b"
rated = "240 L/day"
water_stops_with = "valve"
[actuator.b]
command = "b/set"
lease_kept_by = "plug"
)");
  ASSERT_TRUE(understood.household.has_value());
  const room::Purifier& purifier = *understood.household->room.purifier;
  const room::Purifier plain;
  EXPECT_EQ(purifier.notify_at, plain.notify_at);
  EXPECT_EQ(purifier.stop_at, plain.stop_at);
  EXPECT_EQ(purifier.on_breakthrough, plain.on_breakthrough);
  EXPECT_EQ(purifier.product_flush, plain.product_flush);
  EXPECT_EQ(purifier.permeate_settles, plain.permeate_settles);
  EXPECT_EQ(purifier.judged_over, plain.judged_over);
  EXPECT_EQ(purifier.judged_litres, plain.judged_litres);
  EXPECT_EQ(purifier.frost_below, plain.frost_below);
  EXPECT_EQ(purifier.feed_pressure_low, plain.feed_pressure_low);
  EXPECT_EQ(purifier.flow_lowest_credible, plain.flow_lowest_credible);
  const room::Actuator& actuator = understood.household->room.actuators.at(0);
  const room::Actuator bare;
  EXPECT_EQ(actuator.lease, bare.lease);
  EXPECT_EQ(actuator.travel, bare.travel);
  EXPECT_EQ(actuator.run_longest, bare.run_longest);
  EXPECT_EQ(actuator.on_per_day_longest, bare.on_per_day_longest);
  EXPECT_EQ(actuator.off_shortest, bare.off_shortest);
  EXPECT_EQ(actuator.starts_per_hour_max, bare.starts_per_hour_max);
  EXPECT_EQ(actuator.idle_below, bare.idle_below);
}

}  // namespace
}  // namespace tidewright::config
