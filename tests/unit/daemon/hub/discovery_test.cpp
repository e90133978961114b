#include "daemon/hub/discovery.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "daemon/hub/parts.hpp"
#include "daemon/hub/request.hpp"
#include "tests/support/hub_rules.hpp"
#include "tests/unit/daemon/hub/offered.hpp"

namespace tidewright::hub {
namespace {

using nlohmann::json;
using support::Offered;
using support::understood_by_hub;
using testing::IsEmpty;

const std::string folder = TIDEWRIGHT_SOURCE_DIR "/tests/golden/discovery/";

Message message_of(const Offered& offered) {
  const report::Report report = offered.report();
  return discovery(offered.offers(report), offered.household, offered.manifest);
}

// One line for each component: what a person looks through when something has changed.
std::string summary(const std::string& payload) {
  const json root = json::parse(payload);
  std::string text;
  for (const auto& [key, component] : root["components"].items()) {
    text += key + " " + component.value("platform", "");
    for (const char* word :
         {"device_class", "state_class", "unit_of_measurement", "entity_category", "state_topic",
          "payload_press", "command_template"}) {
      if (component.contains(word)) text += " | " + component[word].get<std::string>();
    }
    text += "\n";
  }
  return text;
}

// With TIDEWRIGHT_WRITE_GOLDEN set the file is written anew, to be read before it is kept.
void expect_golden(const std::string& name, const std::string& text) {
  if (std::getenv("TIDEWRIGHT_WRITE_GOLDEN") != nullptr) std::ofstream(folder + name) << text;
  std::ostringstream kept;
  kept << std::ifstream(folder + name).rdbuf();
  EXPECT_EQ(text, kept.str()) << name;
}

class EachHousehold : public testing::TestWithParam<std::string> {};

// The rules stand in tests/support/hub_rules, written from the hub's own schema.
TEST_P(EachHousehold, IsUnderstoodByTheHubWholly) {
  const Offered offered(support::read_config(GetParam()));
  const Message message = message_of(offered);
  EXPECT_THAT(understood_by_hub(message.topic, message.payload).problems, IsEmpty());
  EXPECT_TRUE(message.retained);
  expect_golden(GetParam() + ".txt", summary(message.payload));
}

TEST_P(EachHousehold, EveryValueIsPublishedAndOneThatTheHubReads) {
  const Offered offered(support::read_config(GetParam()));
  const report::Report report = offered.report();
  std::map<std::string, std::string> published{{offered.household.base + "/online", "online"}};
  const Place place{offered.household.base, offered.household.room.id};
  for (const Message& each : plain(report, place)) published[each.topic] = each.payload;
  const Message message = message_of(offered);
  for (const auto& [key, component] :
       understood_by_hub(message.topic, message.payload).components) {
    for (const std::string& topic : component.availability_topics) {
      EXPECT_TRUE(published.contains(topic)) << key << " waits for " << topic;
    }
    if (component.state_topic.empty() || component.platform == "event") continue;
    ASSERT_TRUE(published.contains(component.state_topic)) << key;
    EXPECT_EQ(wrong_state(component, published[component.state_topic]), "");
  }
}

// Whatever can be pressed is a request that the desk understands.
TEST_P(EachHousehold, EveryButtonAsksOrTellsSomethingThatIsUnderstood) {
  const Offered offered(support::read_config(GetParam()));
  const report::Report report = offered.report();
  const std::string room = offered.household.base + "/" + offered.household.room.id;
  int acts = 0;
  for (const Offer& offer : offered.offers(report)) {
    if (offer.shape != Shape::press && offer.shape != Shape::entry) continue;
    ++acts;
    ASSERT_TRUE(offer.topic == room + "/ask" || offer.topic == room + "/tell") << offer.topic;
    const Verb verb = offer.topic == room + "/ask" ? Verb::ask : Verb::tell;
    const std::string typed =
        offer.shape == Shape::entry ? offer.request + "1" + offer.request_end : offer.request;
    const Request request = read_request(verb, typed, offered.household);
    const auto* refusal = std::get_if<std::string>(&request.content);
    EXPECT_EQ(refusal, nullptr) << typed << ": " << *refusal;
  }
  EXPECT_GT(acts, 5);
}

INSTANTIATE_TEST_SUITE_P(Config, EachHousehold, testing::ValuesIn(support::config_names()),
                         [](const auto& each) {
                           std::string name = each.param;
                           std::replace(name.begin(), name.end(), '-', '_');
                           return name;
                         });

TEST(Discovery, TheMinimalHouseholdAsTheHubGetsIt) {
  const Offered offered(support::read_config("minimal"));
  const Message message = message_of(offered);
  EXPECT_EQ(message.topic, "homeassistant/device/tidewright_0123456789ab/config");
  std::string lines = json::parse(message.payload).dump(1) + "\n";
  expect_golden("minimal.json", lines);
}

TEST(Discovery, TheAcknowledgeButtonIsBoundToTheOccurrence) {
  Offered offered(support::read_config("minimal"));
  const auto payload = [&] {
    const Message message = message_of(offered);
    return understood_by_hub(message.topic, message.payload)
        .components.at("acknowledge_leak")
        .payload_press;
  };
  offered.stage.says(1, 1);  // the leak sensor, see config/minimal.toml
  EXPECT_THAT(payload(), testing::HasSubstr(R"("alarm":"leak","occurrence":1)"));
}

TEST(Discovery, TheTokenStandsInTheSecondPressWhileTheResetIsArmed) {
  Offered offered(support::read_config("minimal"));
  const auto press = [&] {
    const Message message = message_of(offered);
    const auto device = understood_by_hub(message.topic, message.payload);
    return json::parse(device.components.at("confirm_reset_leak").payload_press)["token"];
  };
  offered.stage.says(1, 1);
  offered.stage.says(1, 0);
  offered.stage.wait(std::chrono::minutes{3});
  EXPECT_EQ(press(), 1) << "no token that could count";
  Ask reset;
  reset.kind = AskKind::reset;
  reset.token = 424'242;
  offered.stage.happen(reset);
  EXPECT_EQ(press(), 424'242);
  offered.stage.wait(std::chrono::seconds{31});
  EXPECT_EQ(press(), 1);
}

TEST(Discovery, WhatIsGoneIsTakenBackByItsPlatformAlone) {
  Offered offered(support::read_config("minimal"));
  offered.manifest.components["level_vat_7_volume_l"] = "sensor";
  const json root = json::parse(message_of(offered).payload);
  EXPECT_EQ(root["components"]["level_vat_7_volume_l"], json({{"platform", "sensor"}}));
}

}  // namespace
}  // namespace tidewright::hub
