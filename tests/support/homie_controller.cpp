#include "tests/support/homie_controller.hpp"

#include <nlohmann/json.hpp>
#include <regex>
#include <set>

namespace tidewright::support {
namespace {

using nlohmann::json;

// "Topic IDs": small letters, digits and hyphens.
bool is_id(const std::string& text) {
  static const std::regex id("[a-z0-9-]+");
  return std::regex_match(text, id);
}

const std::set<std::string> states{"init", "ready", "disconnected", "sleeping", "lost"};
const std::set<std::string> datatypes{"integer", "float",    "boolean",  "string", "enum",
                                      "color",   "datetime", "duration", "json"};

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts{""};
  for (const char c : text) {
    if (c == at) {
      parts.emplace_back();
    } else {
      parts.back() += c;
    }
  }
  return parts;
}

// "Payloads".
bool is_payload(const HomieProperty& property, const std::string& payload) {
  static const std::regex number("-?[0-9]+(\\.[0-9]+)?([eE]-?[0-9]+)?");
  static const std::regex moment(
      "\\d{4}-\\d\\d-\\d\\d(T\\d\\d:\\d\\d:\\d\\d(Z|[+-]\\d\\d:\\d\\d))?");
  if (property.datatype == "float") return std::regex_match(payload, number);
  if (property.datatype == "boolean") return payload == "true" || payload == "false";
  if (property.datatype == "datetime") return std::regex_match(payload, moment);
  if (property.datatype == "json") return json::parse(payload, nullptr, false).is_structured();
  if (property.datatype != "enum") return true;
  for (const std::string& option : split(property.format, ',')) {
    if (payload == option) return true;
  }
  return false;
}

}  // namespace

std::string HomieController::value(const std::string& property) const {
  const auto found = values_.find(property);
  return found == values_.end() ? "" : found->second;
}

// homie/5/<device>/$state, /$description, /$alert/<id>, /<node>/<property>[/set]
void HomieController::hear(const Message& message) {
  const auto levels = split(message.topic, '/');
  if (levels.size() < 4 || levels[0] != "homie" || levels[1] != "5") return;
  const std::string device = "homie/5/" + levels[2];
  if (device_.empty()) device_ = device;
  if (device != device_) return complain("a second device " + device);
  if (!is_id(levels[2])) complain("no id: " + levels[2]);
  if (levels[3] == "$state") return take_state(message.payload);
  if (levels[3] == "$description") return take_description(message.payload);
  if (levels[3] == "$alert") {
    if (levels.size() != 5 || !is_id(levels[4])) return complain("no alert: " + message.topic);
    if (message.payload.empty()) {
      alerts_.erase(levels[4]);
    } else {
      alerts_[levels[4]] = message.payload;
    }
    return;
  }
  if (levels.size() == 6 && levels[5] == "set") return;  // a controller's
  if (levels.size() != 5) return complain("no property: " + message.topic);
  take_value(levels[3] + "/" + levels[4], message);
}

void HomieController::take_state(const std::string& payload) {
  if (payload.empty()) {
    story_.push_back("removed");
    state_.clear();
    return;
  }
  if (!states.contains(payload)) complain("no state: " + payload);
  if (payload == "ready" && description_.empty()) complain("ready without a description");
  state_ = payload;
  story_.push_back(payload);
}

// "This value may only change when $state is init, disconnected or lost."
void HomieController::take_description(const std::string& payload) {
  if (payload.empty()) {
    if (!state_.empty()) complain("the description went before the state");
    description_.clear();
    properties_.clear();
    return;
  }
  story_.push_back("description");
  if (payload == description_) return;
  if (state_ != "init" && state_ != "disconnected" && state_ != "lost") {
    complain("the description changed while " + state_);
  }
  description_ = payload;
  const json root = json::parse(payload, nullptr, false);
  if (!root.is_object() || root.value("homie", "") != "5.0") return complain("no description");
  const auto version = root.find("version");
  if (version == root.end() || !version->is_number_integer()) return complain("no version");
  if (version->get<long long>() == version_) complain("the same version of another description");
  version_ = version->get<long long>();
  properties_.clear();
  for (const auto& [node, each] : root["nodes"].items()) {
    if (!is_id(node)) complain("no id: " + node);
    for (const auto& [id, of] : each["properties"].items()) {
      if (!is_id(id)) complain("no id: " + id);
      const HomieProperty property{of.value("datatype", ""), of.value("format", ""),
                                   of.value("unit", ""), of.value("settable", false),
                                   of.value("retained", true)};
      if (!datatypes.contains(property.datatype)) complain(id + " is of no datatype");
      if (property.datatype == "enum" && property.format.empty()) complain(id + " has no format");
      properties_[node + "/" + id] = property;
    }
  }
}

void HomieController::take_value(const std::string& name, const Message& message) {
  const auto found = properties_.find(name);
  if (message.payload.empty()) {
    values_.erase(name);
    return;
  }
  if (found == properties_.end()) {
    if (state_ == "ready") complain(name + " is not described");
    return;
  }
  if (!is_payload(found->second, message.payload)) {
    complain(name + " is no " + found->second.datatype + ": " + message.payload);
  }
  if (message.retained && !found->second.retained) complain(name + " is retained");
  values_[name] = message.payload;
}

}  // namespace tidewright::support
