#include "daemon/hub/parts.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "daemon/hub/manifest.hpp"
#include "tests/unit/daemon/hub/offered.hpp"

namespace tidewright::hub {
namespace {

using room::Place;
using room::Quantity;

config::Household household_with(std::vector<std::pair<std::string, std::string>> leaks) {
  config::Household household;
  for (const auto& [id, topic] : leaks) {
    room::Instrument instrument;
    instrument.id = id;
    instrument.quantity = Quantity::wetness;
    instrument.place = Place::floor;
    household.room.instruments.push_back(instrument);
    config::Source source;
    source.topic = topic;
    household.sources.push_back(source);
  }
  return household;
}

std::string key(const std::vector<Part>& parts, const std::string& name) {
  const auto found = std::find_if(parts.begin(), parts.end(), [&](const Part& part) {
    return part.present && part.name == name;
  });
  return found == parts.end() ? "" : found->key;
}

TEST(Parts, KeepTheirKeyInAnotherOrder) {
  const auto first = adopt(household_with({{"sink", "a"}, {"drain", "b"}}), {});
  EXPECT_EQ(key(first, "sink"), "wetness_floor_1");
  EXPECT_EQ(key(first, "drain"), "wetness_floor_2");
  const auto then = adopt(household_with({{"drain", "b"}, {"sink", "a"}}), first);
  EXPECT_EQ(key(then, "sink"), "wetness_floor_1");
  EXPECT_EQ(key(then, "drain"), "wetness_floor_2");
}

TEST(Parts, KeepTheirKeyUnderAnotherNameOrOnAnotherTopicOrBoth) {
  const auto first = adopt(household_with({{"sink", "a"}, {"drain", "b"}}), {});
  const auto renamed = adopt(household_with({{"cellar", "a"}, {"drain", "b"}}), first);
  EXPECT_EQ(key(renamed, "cellar"), "wetness_floor_1");
  const auto moved = adopt(household_with({{"cellar", "c"}, {"drain", "b"}}), renamed);
  EXPECT_EQ(key(moved, "cellar"), "wetness_floor_1");
  const auto both = adopt(household_with({{"attic", "d"}, {"drain", "b"}}), moved);
  EXPECT_EQ(key(both, "attic"), "wetness_floor_1");
  EXPECT_EQ(both.size(), 2u);
}

TEST(Parts, AKeyThatWasGivenIsNotGivenToAnother) {
  const auto first = adopt(household_with({{"sink", "a"}, {"drain", "b"}}), {});
  const auto fewer = adopt(household_with({{"drain", "b"}}), first);
  EXPECT_EQ(fewer.size(), 2u);
  const auto more = adopt(household_with({{"attic", "x"}, {"drain", "b"}}), fewer);
  EXPECT_EQ(key(more, "attic"), "wetness_floor_3");
  const auto back = adopt(household_with({{"sink", "a"}, {"drain", "b"}}), fewer);
  EXPECT_EQ(key(back, "sink"), "wetness_floor_1") << "known again";
}

TEST(Parts, EveryHouseholdHasKeysOfItsOwn) {
  for (const std::string& name : support::config_names()) {
    const config::Household household = support::read_config(name);
    std::set<std::string> keys;
    for (const Part& part : adopt(household, {})) EXPECT_TRUE(keys.insert(part.key).second);
    EXPECT_EQ(keys.size(), household.sources.size() + household.room.supplies.size());
  }
}

TEST(Manifest, IsReadAsItWasWritten) {
  Manifest manifest{"0123456789ab",
                    adopt(household_with({{"sink", "a topic/with blanks"}, {"drain", "b"}}), {}),
                    {{"vat_state", "sensor"}},
                    {"tidewright/online", "x y/z"}};
  manifest.parts[1].present = false;
  EXPECT_EQ(manifest_of(to_text(manifest)), manifest);
}

TEST(Manifest, AnythingElseIsRefused) {
  for (const char* text : {"", "instance", "topic a\n", "instance 1\nsomething else\n",
                           "instance 1\ntopic without end"}) {
    EXPECT_FALSE(manifest_of(text)) << text;
  }
}

}  // namespace
}  // namespace tidewright::hub
