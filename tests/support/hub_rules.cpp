#include "tests/support/hub_rules.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

namespace tidewright::support {
namespace {

using nlohmann::json;
using Words = std::set<std::string>;

const Words root_keys{"device",
                      "origin",
                      "components",
                      "availability",
                      "availability_topic",
                      "availability_mode",
                      "availability_template",
                      "payload_available",
                      "payload_not_available",
                      "state_topic",
                      "command_topic",
                      "qos",
                      "encoding"};
const Words device_keys{"identifiers", "connections",    "manufacturer", "model",
                        "model_id",    "name",           "hw_version",   "serial_number",
                        "sw_version",  "suggested_area", "via_device",   "configuration_url"};
const Words origin_keys{"name", "sw_version", "support_url"};
const Words keys_of_all{"platform",
                        "unique_id",
                        "default_entity_id",
                        "name",
                        "icon",
                        "qos",
                        "entity_category",
                        "enabled_by_default",
                        "availability",
                        "availability_topic",
                        "availability_mode",
                        "device_class"};
const std::map<std::string, Words> keys_of{
    {"sensor",
     {"state_topic", "unit_of_measurement", "state_class", "options", "expire_after",
      "suggested_display_precision"}},
    {"binary_sensor", {"state_topic", "payload_on", "payload_off", "expire_after", "off_delay"}},
    {"button", {"command_topic", "payload_press", "retain"}},
    {"number",
     {"command_topic", "command_template", "state_topic", "min", "max", "step", "mode",
      "unit_of_measurement", "retain"}},
    {"event", {"state_topic", "event_types"}},
};
const std::map<std::string, Words> needed_by{
    {"sensor", {"state_topic"}},
    {"binary_sensor", {"state_topic"}},
    {"button", {"command_topic", "payload_press"}},
    {"number", {"command_topic", "min", "max"}},
    {"event", {"state_topic", "event_types"}},
};

// Of a sensor: the units and the state classes that go with a class. "" = none.
struct Class {
  Words units;
  Words states;
};
const std::map<std::string, Class> sensor_classes{
    {"volume_storage", {{"L", "mL", "m³"}, {"measurement"}}},
    {"volume_flow_rate", {{"L/min", "m³/h", "L/s"}, {"measurement"}}},
    {"water", {{"L", "m³"}, {"total", "total_increasing"}}},
    {"conductivity", {{"\u00b5S/cm", "mS/cm", "S/cm"}, {"measurement"}}},
    {"temperature", {{"°C", "°F", "K"}, {"measurement"}}},
    {"pressure", {{"bar", "mbar", "Pa", "kPa", "psi"}, {"measurement"}}},
    {"power", {{"W", "kW"}, {"measurement"}}},
    {"duration", {{"d", "h", "min", "s"}, {"", "measurement", "total", "total_increasing"}}},
    {"weight", {{"kg", "g"}, {"measurement"}}},
    {"timestamp", {{""}, {""}}},
    {"date", {{""}, {""}}},
    {"enum", {{""}, {""}}},
};
const Words binary_classes{"problem", "running", "moisture", "connectivity", "opening"};

struct Reading {
  HubDevice device;
  std::set<std::string> unique_ids, entity_ids;

  void complain(const std::string& where, const std::string& what) {
    device.problems.push_back(where + ": " + what);
  }
  void only(const std::string& where, const json& object, const Words& allowed) {
    for (const auto& [key, value] : object.items()) {
      if (!allowed.contains(key)) complain(where, "unknown key " + key);
      if (value.is_null()) complain(where, key + " is null");
    }
  }
};

std::string text(const json& object, const char* key) {
  const auto found = object.find(key);
  return found != object.end() && found->is_string() ? found->get<std::string>() : "";
}

void read_availability(Reading& reading, const std::string& where, const json& object,
                       std::vector<std::string>& topics) {
  if (object.contains("availability") && object.contains("availability_topic")) {
    reading.complain(where, "availability and availability_topic exclude each other");
  }
  if (!object.contains("availability")) return;
  const json& list = object["availability"];
  if (!list.is_array() || list.empty()) return reading.complain(where, "availability is no list");
  for (const json& each : list) {
    reading.only(where + " availability", each,
                 {"topic", "payload_available", "payload_not_available", "value_template"});
    if (text(each, "topic").empty()) reading.complain(where, "availability without a topic");
    topics.push_back(text(each, "topic"));
  }
  if (text(object, "availability_mode") != "all") reading.complain(where, "mode is not all");
}

void read_sensor(Reading& reading, const std::string& where, const json& component) {
  const std::string meaning = text(component, "device_class");
  const std::string unit = text(component, "unit_of_measurement");
  const std::string state = text(component, "state_class");
  if (text(component, "entity_category") == "config")
    reading.complain(where, "a sensor is no config");
  if ((meaning == "enum") != component.contains("options")) {
    reading.complain(where, "enum and options go together");
  }
  if (meaning.empty()) {
    if (unit.empty() != state.empty()) reading.complain(where, "unit and state class go together");
    return;
  }
  const auto found = sensor_classes.find(meaning);
  if (found == sensor_classes.end()) return reading.complain(where, "no sensor is a " + meaning);
  if (!found->second.units.contains(unit)) reading.complain(where, meaning + " in '" + unit + "'");
  if (!found->second.states.contains(state)) {
    reading.complain(where, meaning + " as '" + state + "'");
  }
}

void read_asked(Reading& reading, const std::string& where, const json& component,
                const std::string& platform) {
  if (component.value("retain", false)) reading.complain(where, "a command is never retained");
  if (platform != "number") return;
  if (!(component["min"] < component["max"])) reading.complain(where, "min is not below max");
  if (component.value("step", 1.0) < 0.001) reading.complain(where, "its step is too small");
  if (text(component, "command_template").find("{{ value }}") == std::string::npos) {
    reading.complain(where, "its template has no value");
  }
}

void read_identity(Reading& reading, const std::string& where, const json& component) {
  const std::string unique = text(component, "unique_id");
  if (unique.empty()) reading.complain(where, "has no unique_id");
  if (!reading.unique_ids.insert(unique).second) reading.complain(where, "unique_id is not unique");
  const std::string entity = text(component, "default_entity_id");
  if (!std::regex_match(entity, std::regex("[a-z_]+\\.[a-z0-9_]+"))) {
    reading.complain(where, "is no entity id: " + entity);
  }
  if (entity.substr(0, entity.find('.')) != text(component, "platform")) {
    reading.complain(where, "is an entity of another platform");
  }
  if (!reading.entity_ids.insert(entity).second) reading.complain(where, "entity id comes twice");
  if (text(component, "name").empty()) reading.complain(where, "has no name");
}

void read_component(Reading& reading, const std::string& key, const json& from) {
  HubComponent& component = reading.device.components[key];
  if (!from.is_object()) return reading.complain(key, "is no object");
  component.platform = text(from, "platform");
  const auto known = keys_of.find(component.platform);
  if (known == keys_of.end()) return reading.complain(key, "no platform " + component.platform);
  if (from.size() == 1) return;  // taken back
  Words allowed = keys_of_all;
  allowed.insert(known->second.begin(), known->second.end());
  reading.only(key, from, allowed);
  for (const std::string& needed : needed_by.at(component.platform)) {
    if (!from.contains(needed)) return reading.complain(key, "lacks " + needed);
  }
  read_identity(reading, key, from);
  read_availability(reading, key, from, component.availability_topics);
  component.unique_id = text(from, "unique_id");
  component.state_topic = text(from, "state_topic");
  component.command_topic = text(from, "command_topic");
  component.device_class = text(from, "device_class");
  component.state_class = text(from, "state_class");
  component.payload_press = text(from, "payload_press");
  for (const char* list : {"options", "event_types"}) {
    if (from.contains(list)) component.options = from[list].get<std::vector<std::string>>();
  }
  if (component.platform == "sensor") read_sensor(reading, key, from);
  if (component.platform == "binary_sensor" && from.contains("device_class") &&
      !binary_classes.contains(component.device_class)) {
    reading.complain(key, "no binary sensor is a " + component.device_class);
  }
  if (!component.command_topic.empty()) read_asked(reading, key, from, component.platform);
}

}  // namespace

HubDevice understood_by_hub(const std::string& topic, const std::string& payload) {
  Reading reading;
  if (!std::regex_match(topic, std::regex("[^+#]+/device/[a-zA-Z0-9_-]+/config"))) {
    reading.complain(topic, "is no topic of a device");
  }
  const json root = json::parse(payload, nullptr, false);
  if (!root.is_object()) {
    reading.complain(topic, "is no JSON object");
    return reading.device;
  }
  reading.only("root", root, root_keys);
  for (const char* needed : {"device", "origin", "components"}) {
    if (!root.contains(needed) || !root[needed].is_object()) {
      reading.complain("root", std::string("lacks ") + needed);
      return reading.device;
    }
  }
  reading.only("device", root["device"], device_keys);
  reading.only("origin", root["origin"], origin_keys);
  if (text(root["origin"], "name").empty()) reading.complain("origin", "has no name");
  if (!root["device"].contains("identifiers") && !root["device"].contains("connections")) {
    reading.complain("device", "cannot be known again");
  }
  std::vector<std::string> topics;
  read_availability(reading, "root", root, topics);
  for (const auto& [key, component] : root["components"].items()) {
    read_component(reading, key, component);
    auto& own = reading.device.components[key].availability_topics;
    if (own.empty()) own = topics;
  }
  return reading.device;
}

std::string wrong_state(const HubComponent& component, const std::string& payload) {
  static const std::regex number("-?[0-9]+(\\.[0-9]+)?");
  static const std::regex moment("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(Z|[+-]\\d\\d:\\d\\d)");
  static const std::regex day("\\d{4}-\\d\\d-\\d\\d");
  if (payload == "None")
    return component.state_class == "total_increasing" ? "a total is None" : "";
  const auto need = [&](bool good) {
    return good ? "" : component.unique_id + " shows '" + payload + "'";
  };
  if (payload.empty() || payload.size() > 255) return need(false);
  if (component.platform == "binary_sensor") return need(payload == "true" || payload == "false");
  if (component.device_class == "timestamp") return need(std::regex_match(payload, moment));
  if (component.device_class == "date") return need(std::regex_match(payload, day));
  if (!component.state_class.empty()) return need(std::regex_match(payload, number));
  if (component.options.empty()) return "";
  return need(std::find(component.options.begin(), component.options.end(), payload) !=
              component.options.end());
}

}  // namespace tidewright::support
