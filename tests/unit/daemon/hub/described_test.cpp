// The convention upon the report of a room that lives: what nobody wrote a golden file for.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "daemon/hub/plain.hpp"
#include "tests/support/stage.hpp"

namespace tidewright::hub {
namespace {

using support::Stage;

std::vector<std::vector<Message>> rooms() {
  std::vector<std::vector<Message>> made;
  const Place place{"tidewright", "waterroom"};
  for (const room::Room& room : {support::minimal_room(), support::full_room()}) {
    Stage stage{room};
    stage.happen(Started{.clean = true});
    made.push_back(plain(report::describe(stage.room, stage.state), place));
    stage.begin();
    stage.wait(std::chrono::hours{2});
    made.push_back(plain(report::describe(stage.room, stage.state), place));
  }
  return made;
}

bool is_json(const Message& message) { return message.content_from > 0; }

TEST(Described, EveryTopicIsPublishedOnceAndRetained) {
  for (const auto& messages : rooms()) {
    std::set<std::string> topics;
    for (const Message& message : messages) {
      EXPECT_TRUE(topics.insert(message.topic).second) << message.topic;
      EXPECT_TRUE(message.retained);
      EXPECT_FALSE(message.payload.empty()) << message.topic << " would delete itself";
      const auto allowed = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-' || c == '/';
      };
      EXPECT_TRUE(std::all_of(message.topic.begin(), message.topic.end(), allowed))
          << message.topic;
    }
  }
}

TEST(Described, WhatIsNotKnownIsNullWithAWhy) {
  for (const auto& messages : rooms()) {
    for (const Message& message : messages) {
      if (!is_json(message)) continue;
      const auto document = nlohmann::json::parse(message.payload);
      EXPECT_TRUE(document.contains("at")) << message.topic;
      for (const auto& [name, value] : document.items()) {
        if (!value.is_null()) continue;
        const auto why = document.find(name + "_why");
        ASSERT_NE(why, document.end()) << message.topic << " " << name;
        EXPECT_FALSE(why->get<std::string>().empty()) << message.topic << " " << name;
      }
    }
  }
}

// The fields that households may rely on.
TEST(Described, HoldsThePromisedFields) {
  const std::map<std::string, std::vector<std::string>> promised{
      {"vat/pure",
       {"volume_l", "fill_percent", "rate_l_h", "full_at", "state", "ready", "ready_at",
        "waiting_for", "days_of_top_off", "quality", "why"}},
      {"purifier",
       {"state", "feed_tds_ppm", "permeate_tds_ppm", "lead_outlet_tds_ppm", "product_tds_ppm",
        "rejection_percent", "recovery_percent", "flow_at_25c_l_h"}},
      {"actuator/booster", {"wanted", "confirmed", "why", "lease_s", "tripped", "override"}},
      {"alarm/leak",
       {"state", "priority", "occurrence", "since", "why", "cause", "consequence", "action",
        "respond_within_min"}},
  };
  for (const auto& messages : rooms()) {
    for (const auto& [thing, fields] : promised) {
      const std::string topic = "tidewright/waterroom/" + thing;
      const auto found = std::find_if(messages.begin(), messages.end(),
                                      [&](const Message& m) { return m.topic == topic; });
      ASSERT_NE(found, messages.end()) << thing;
      const auto document = nlohmann::json::parse(found->payload);
      for (const std::string& field : fields) {
        EXPECT_TRUE(document.contains(field)) << thing << " lacks " << field;
      }
    }
  }
}

}  // namespace
}  // namespace tidewright::hub
