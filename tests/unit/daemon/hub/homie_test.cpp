#include "daemon/hub/homie.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "daemon/hub/request.hpp"
#include "tests/support/homie_controller.hpp"
#include "tests/unit/daemon/hub/offered.hpp"

namespace tidewright::hub {
namespace {

using support::HomieController;
using support::Offered;
using testing::IsEmpty;

const std::string device = "homie/5/tidewright-0123456789ab";

std::vector<Message> messages_of(const Offered& offered) {
  const report::Report report = offered.report();
  const View view{offered.household, report, offered.manifest.parts};
  return homie(offered.offers(report), view, offered.manifest);
}

HomieController controller_of(const Offered& offered) {
  HomieController controller;
  controller.hear({.topic = device + "/$state", .payload = "init"});
  for (const Message& each : messages_of(offered)) {
    controller.hear({.topic = each.topic, .payload = each.payload, .retained = each.retained});
  }
  controller.hear({.topic = device + "/$state", .payload = "ready"});
  return controller;
}

std::optional<HomieSet> set(const Offered& offered, const std::string& property,
                            const std::string& payload) {
  const report::Report report = offered.report();
  const std::string topic = device + "/" + property + "/set";
  Letter letter;
  letter.payload = payload;
  return homie_set(offered.offers(report), offered.manifest, letter, topic);
}

class HomieHousehold : public testing::TestWithParam<std::string> {};

// The rules stand in tests/support/homie_controller, written from the specification.
TEST_P(HomieHousehold, IsTakenByAControllerByTheBook) {
  const Offered offered(support::read_config(GetParam()));
  const HomieController controller = controller_of(offered);
  EXPECT_THAT(controller.problems(), IsEmpty());
  EXPECT_GT(controller.properties().size(), 20u);
}

TEST_P(HomieHousehold, WhateverIsSettableIsUnderstoodAsARequest) {
  const Offered offered(support::read_config(GetParam()));
  int settable = 0;
  const HomieController controller = controller_of(offered);
  for (const auto& [name, property] : controller.properties()) {
    const std::string payload = property.datatype == "enum" ? property.format : "1.5";
    const auto taken = set(offered, name, payload);
    ASSERT_EQ(taken.has_value(), property.settable) << name;
    if (!taken) continue;
    ++settable;
    const auto request = read_request(taken->letter.verb, taken->letter.payload, offered.household);
    EXPECT_FALSE(std::holds_alternative<std::string>(request.content)) << taken->letter.payload;
    EXPECT_EQ(taken->reflected.payload, payload);
    EXPECT_FALSE(taken->reflected.retained);
  }
  EXPECT_GT(settable, 5);
}

INSTANTIATE_TEST_SUITE_P(Config, HomieHousehold, testing::ValuesIn(support::config_names()),
                         [](const auto& each) {
                           std::string name = each.param;
                           std::replace(name.begin(), name.end(), '-', '_');
                           return name;
                         });

TEST(Homie, TheMinimalHouseholdAsAControllerGetsIt) {
  const Offered offered(support::read_config("minimal"));
  std::string text;
  for (const Message& message : messages_of(offered)) {
    const bool is_description = message.topic.ends_with("$description");
    text += message.topic + "\n";
    text += is_description ? nlohmann::json::parse(message.payload).dump(1) : message.payload;
    text += "\n";
  }
  const std::string file = TIDEWRIGHT_SOURCE_DIR "/tests/golden/homie/minimal.txt";
  if (std::getenv("TIDEWRIGHT_WRITE_GOLDEN") != nullptr) std::ofstream(file) << text;
  std::ostringstream kept;
  kept << std::ifstream(file).rdbuf();
  EXPECT_EQ(text, kept.str());
}

TEST(Homie, AnAlarmThatStandsIsAnAlert) {
  Offered offered(support::read_config("minimal"));
  EXPECT_THAT(controller_of(offered).alerts(), IsEmpty());
  offered.stage.says(1, 1);  // the leak sensor
  EXPECT_THAT(controller_of(offered).alerts().at("leak"), testing::HasSubstr("says wet"));
}

TEST(Homie, OnlyAnotherDescriptionHasAnotherVersion) {
  Offered offered(support::read_config("minimal"));
  const auto description = [&] { return messages_of(offered).front().payload; };
  const std::string before = description();
  offered.stage.says(1, 1);
  EXPECT_EQ(description(), before) << "it must not change while the device is ready";
  const Offered other(support::read_config("rung-3"));
  EXPECT_NE(nlohmann::json::parse(messages_of(other).front().payload)["version"],
            nlohmann::json::parse(before)["version"]);
}

TEST(Homie, WhatCannotBeSetIsNotTaken) {
  const Offered offered(support::read_config("minimal"));
  EXPECT_FALSE(set(offered, "vat/volume-l", "12"));
  EXPECT_FALSE(set(offered, "request/no-such-thing", "press"));
  EXPECT_FALSE(set(offered, "request/test-announcement", "true"));
  for (const char* value : {"", "wet", "1,5", "+1", "1 ", "nan"}) {
    EXPECT_FALSE(set(offered, "request/measured-solids-product-1", value)) << value;
  }
}

}  // namespace
}  // namespace tidewright::hub
