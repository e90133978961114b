// The tests' own hub sees what is wrong: each fault is planted once.
#include "tests/support/hub_rules.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/support/hub_capture.hpp"

namespace tidewright::support {
namespace {

using nlohmann::json;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

const std::string topic = "homeassistant/device/tidewright_0123456789ab/config";
const std::string room = "tidewright/waterroom/";

json whole() {
  return json::parse(std::ifstream(TIDEWRIGHT_SOURCE_DIR "/tests/golden/discovery/minimal.json"));
}

struct Fault {
  const char* name;
  void (*plant)(json& root);
  const char* said;
};

class PlantedFault : public testing::TestWithParam<Fault> {};

TEST_P(PlantedFault, IsSeen) {
  json root = whole();
  EXPECT_THAT(understood_by_hub(topic, root.dump()).problems, IsEmpty());
  GetParam().plant(root);
  EXPECT_THAT(understood_by_hub(topic, root.dump()).problems, Contains(HasSubstr(GetParam().said)));
}

json& volume(json& root) { return root["components"]["vat_volume_l"]; }

const Fault faults[] = {
    {"RootKey", [](json& root) { root["cmps"] = 1; }, "unknown key cmps"},
    {"NoOrigin", [](json& root) { root.erase("origin"); }, "lacks origin"},
    {"NoIdentifier", [](json& root) { root["device"].erase("identifiers"); }, "known again"},
    {"ComponentKey", [](json& root) { volume(root)["object_id"] = "x"; }, "unknown key object_id"},
    {"Template", [](json& root) { volume(root)["value_template"] = "x"; }, "value_template"},
    {"Platform", [](json& root) { volume(root)["platform"] = "gauge"; }, "no platform gauge"},
    {"Unit", [](json& root) { volume(root)["unit_of_measurement"] = "l"; }, "volume_storage in"},
    {"StateClass", [](json& root) { volume(root)["state_class"] = "total"; }, "as 'total'"},
    {"SensorIsConfig", [](json& root) { volume(root)["entity_category"] = "config"; }, "config"},
    {"NoUniqueId", [](json& root) { volume(root).erase("unique_id"); }, "no unique_id"},
    {"SameId",
     [](json& root) { volume(root)["unique_id"] = root["components"]["vat_state"]["unique_id"]; },
     "not unique"},
    {"AvailabilityLatest", [](json& root) { volume(root)["availability_mode"] = "latest"; },
     "mode is not all"},
    {"RetainedCommand", [](json& root) { root["components"]["reset_leak"]["retain"] = true; },
     "never retained"},
    {"EnumWithoutOptions", [](json& root) { root["components"]["vat_state"].erase("options"); },
     "go together"},
};

INSTANTIATE_TEST_SUITE_P(HubRules, PlantedFault, testing::ValuesIn(faults),
                         [](const auto& each) { return std::string(each.param.name); });

class CaptureTest : public testing::Test {
 protected:
  CaptureTest() { says(topic, whole().dump()); }
  void says(const std::string& on, const std::string& payload, bool retained = false) {
    Message message{.topic = on, .payload = payload};
    message.retained = retained;
    capture_.hear(message);
  }
  void expect_problem(const std::string& said) {
    EXPECT_THAT(capture_.problems(), Contains(HasSubstr(said)));
  }
  HubCapture capture_;
};

TEST_F(CaptureTest, WrongValuesAreSeen) {
  EXPECT_THAT(capture_.problems(), IsEmpty());
  says(room + "value/vat/pure/volume_l", "12.5");
  says(room + "value/vat/pure/volume_l", "None");
  says(room + "value/vat/pure/full_at", "2026-03-01T07:29:58+01:00");
  EXPECT_THAT(capture_.problems(), IsEmpty());
  says(room + "value/vat/pure/volume_l", "1.2e1");
  expect_problem("shows '1.2e1'");
  says(room + "value/vat/pure/full_at", "2026-03-01 07:29");
  expect_problem("shows '2026-03-01 07:29'");
  says(room + "value/vat/pure/state", "leaking");
  expect_problem("shows 'leaking'");
}

TEST_F(CaptureTest, AFallingTotalIsSeen) {
  says(room + "value/ledger/made_total_l", "12.0");
  says(room + "value/ledger/made_total_l", "11.9");
  expect_problem("ledger_made_total_l fell");
}

TEST_F(CaptureTest, ANewIdAndAVanishedComponentAreSeen) {
  json other = whole();
  volume(other)["unique_id"] = "another";
  other["components"].erase("vat_state");
  says(topic, other.dump());
  expect_problem("vat_volume_l has another unique id");
  expect_problem("vat_state vanished");
}

TEST_F(CaptureTest, OrphansAndWhatIsRetainedThoughItMustNotBeAreSeen) {
  const auto kept = [](const std::string& on) {
    Message message{.topic = on, .payload = "x"};
    message.retained = true;
    return message;
  };
  capture_.compare_with_retained(
      {kept("homeassistant/device/old/config"), kept(room + "source/gone/online"),
       kept(room + "announcement"), kept(room + "ask")},
      room, {"vat/pure", "announcement", "ask"});
  expect_problem("a config of nobody");
  expect_problem("there is no source/gone");
  expect_problem("a retained event");
  expect_problem("a retained command");
  expect_problem("the config is not retained");
  expect_problem("vat_volume_l never had a value");
  expect_problem("vat_volume_l waits for tidewright/online");
}

}  // namespace
}  // namespace tidewright::support
