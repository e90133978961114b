#include "daemon/showing.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/support/process.hpp"
#include "tests/unit/daemon/hub/offered.hpp"

namespace tidewright {
namespace {

using nlohmann::json;
using support::Offered;

class ShowingTest : public testing::Test {
 protected:
  using Messages = std::vector<hub::Message>;

  static std::string config_topic(const Messages& messages) {
    for (const hub::Message& message : messages) {
      if (message.topic.ends_with("/config")) return message.topic;
    }
    return "";
  }
  static std::string payload(const Messages& messages, const std::string& topic) {
    const auto found = std::find_if(messages.begin(), messages.end(),
                                    [&](const hub::Message& m) { return m.topic == topic; });
    return found == messages.end() ? "not published" : found->payload;
  }
  static json components(const Messages& messages) {
    return json::parse(payload(messages, config_topic(messages)))["components"];
  }
  static std::vector<std::string> taken_back(const Messages& messages) {
    std::vector<std::string> topics;
    for (const hub::Message& message : messages) {
      if (message.payload.empty()) topics.push_back(message.topic);
    }
    return topics;
  }
  static Messages shown(Showing& showing, const Offered& offered) {
    const State& state = offered.stage.state;
    return showing.everything(state, report::describe(offered.household.room, state)).plain;
  }
  // One run of the daemon, until the broker has everything.
  Messages run(const Offered& offered) {
    Showing showing(offered.household, directory_.path());
    Messages all = shown(showing, offered);
    showing.arrived(all, {});
    return all;
  }

  support::TemporaryDirectory directory_;
  Offered minimal_{support::read_config("minimal")};
};

TEST_F(ShowingTest, AHubFindsTheSameThingsAfterARestart) {
  const Messages first = run(minimal_);
  const Messages second = run(minimal_);
  EXPECT_EQ(first, second);
  EXPECT_THAT(taken_back(first), testing::IsEmpty());
  EXPECT_TRUE(components(first).contains("vat_volume_l"));
}

TEST_F(ShowingTest, TwoHouseholdsHaveDifferentIds) {
  const support::TemporaryDirectory other;
  Showing elsewhere(minimal_.household, other.path());
  EXPECT_NE(config_topic(shown(elsewhere, minimal_)), config_topic(run(minimal_)));
}

TEST_F(ShowingTest, ARenamedInstrumentKeepsItsIdAndLeavesNothingBehind) {
  const json before = components(run(minimal_));
  config::Household renamed = support::read_config("minimal");
  renamed.room.instruments[1].id = "drain";
  const Messages after = run(Offered(renamed));
  const json component = components(after)["wetness_floor_1_wet"];
  EXPECT_EQ(component["unique_id"], before["wetness_floor_1_wet"]["unique_id"]);
  EXPECT_EQ(component["state_topic"], "tidewright/waterroom/value/source/drain/wet");
  EXPECT_THAT(taken_back(after), testing::Contains("tidewright/waterroom/value/source/floor/wet"));
  EXPECT_THAT(taken_back(after), testing::Contains("tidewright/waterroom/source/floor/online"));
  EXPECT_THAT(taken_back(run(Offered(renamed))), testing::IsEmpty());
}

TEST_F(ShowingTest, WhatIsRemovedIsTakenBackOnceAndThenAbsent) {
  run(Offered(support::read_config("full")));
  config::Household fewer = support::read_config("full");
  const std::string removed = fewer.room.supplies.back().id;
  fewer.room.supplies.pop_back();
  const Offered offered(fewer);
  Showing showing(offered.household, directory_.path());
  const Messages first = shown(showing, offered);
  EXPECT_EQ(components(first)["supply_2_in_stock"], json({{"platform", "sensor"}}));
  EXPECT_EQ(components(first)["stocked_supply_2"], json({{"platform", "number"}}));
  EXPECT_THAT(taken_back(first),
              testing::Contains("tidewright/cellar/value/supply/" + removed + "/in_stock"));
  EXPECT_TRUE(showing.arrived(first, {}));
  const Messages second = shown(showing, offered);
  EXPECT_FALSE(components(second).contains("supply_2_in_stock"));
  EXPECT_THAT(taken_back(second), testing::IsEmpty());
  EXPECT_FALSE(showing.arrived(second, {}));
}

TEST_F(ShowingTest, WhatWasNotSeenToArriveIsTakenBackByTheNextRun) {
  run(Offered(support::read_config("full")));
  config::Household fewer = support::read_config("full");
  fewer.room.supplies.pop_back();
  const Offered offered(fewer);
  for (int run = 0; run < 3; ++run) {
    Showing showing(offered.household, directory_.path());
    EXPECT_EQ(components(shown(showing, offered))["supply_2_in_stock"],
              json({{"platform", "sensor"}}));
  }
}

TEST_F(ShowingTest, SwitchedOffNothingOfItIsLeft) {
  const std::string topic = config_topic(run(minimal_));
  config::Household off = support::read_config("minimal");
  off.hub.discovery = false;
  EXPECT_THAT(taken_back(run(Offered(off))), testing::ElementsAre(topic));
  EXPECT_THAT(taken_back(run(Offered(off))), testing::IsEmpty());
  EXPECT_EQ(config_topic(run(minimal_)), topic) << "and on again it is the same device";
}

TEST_F(ShowingTest, UnderAnotherPrefixTheOldDeviceGoesFirst) {
  const std::string topic = config_topic(run(minimal_));
  config::Household moved = support::read_config("minimal");
  moved.hub.prefix = "attic";
  const Messages all = run(Offered(moved));
  EXPECT_EQ(all.front().topic, topic);
  EXPECT_TRUE(all.front().payload.empty());
}

// Without a disk the ids would be others after every restart: a hub must not learn them.
TEST_F(ShowingTest, NoHubFindsWhatIsNotWrittenDown) {
  Showing showing(minimal_.household, directory_.path() + "/missing");
  const Messages all = shown(showing, minimal_);
  EXPECT_EQ(config_topic(all), "");
  EXPECT_EQ(payload(all, "tidewright/waterroom/value/vat/pure/state"), "filling");
  EXPECT_FALSE(showing.arrived(all, {}));
}

TEST_F(ShowingTest, ADamagedRecordIsSetAsideAndTheHubToldAnew) {
  const std::string topic = config_topic(run(minimal_));
  support::write_file(directory_.path() + "/hub.db", "this is no database");
  const std::string anew = config_topic(run(minimal_));
  EXPECT_NE(anew, topic);
  EXPECT_NE(anew, "");
  EXPECT_EQ(config_topic(run(minimal_)), anew);
}

}  // namespace
}  // namespace tidewright
