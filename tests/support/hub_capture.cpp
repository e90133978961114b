#include "tests/support/hub_capture.hpp"

#include <nlohmann/json.hpp>

namespace tidewright::support {
namespace {

// `vat/pure` of `value/vat/pure/volume_l`, `source/floor` of `source/floor/online`.
std::string thing_of(std::string rest) {
  if (rest.starts_with("value/")) rest.erase(0, 6);
  const std::size_t first = rest.find('/');
  if (first == std::string::npos) return rest;
  const std::size_t second = rest.find('/', first + 1);
  for (const char* kind : {"vat/", "resin/", "actuator/", "alarm/", "source/", "supply/"}) {
    if (rest.starts_with(kind)) return rest.substr(0, second);
  }
  return rest.substr(0, first);
}

}  // namespace

bool HubCapture::is_config(const std::string& topic) const {
  return topic.starts_with(prefix_ + "/") && topic.ends_with("/config");
}

std::string HubCapture::said(const std::string& topic) const {
  const auto found = said_.find(topic);
  return found == said_.end() ? "" : found->second;
}

std::string HubCapture::told_of_all() const {
  std::string all;
  for (const std::string& problem : problems_) all += problem + "\n";
  return all;
}

void HubCapture::hear(const Message& message) {
  if (is_config(message.topic)) return take_config(message);
  if (message.payload.empty()) {
    said_.erase(message.topic);
  } else {
    said_[message.topic] = message.payload;
  }
  take_state(message);
}

void HubCapture::take_config(const Message& message) {
  if (message.payload.empty()) {
    if (message.topic == device_topic_) components_.clear();
    return;
  }
  ++configs_heard_;
  if (!device_topic_.empty() && device_topic_ != message.topic && !components_.empty()) {
    complain("a second device: " + message.topic);
  }
  device_topic_ = message.topic;
  HubDevice device = understood_by_hub(message.topic, message.payload);
  problems_.insert(problems_.end(), device.problems.begin(), device.problems.end());
  for (const auto& [key, before] : components_) {
    if (!device.components.contains(key)) complain(key + " vanished without being taken back");
  }
  for (auto& [key, component] : device.components) {
    if (component.unique_id.empty()) continue;
    const auto [known, is_new] = unique_ids_.emplace(key, component.unique_id);
    if (!is_new && known->second != component.unique_id) complain(key + " has another unique id");
    components_[key] = component;
  }
  std::erase_if(components_, [&](const auto& each) {
    return !device.components.contains(each.first) ||
           device.components[each.first].unique_id.empty();
  });
}

void HubCapture::take_state(const Message& message) {
  for (const auto& [key, component] : components_) {
    if (component.state_topic != message.topic || message.payload.empty()) continue;
    if (component.platform == "event") {
      const auto said = nlohmann::json::parse(message.payload, nullptr, false);
      if (message.retained) complain("a retained event");
      if (!said.is_object() || !said.contains("event_type")) complain("an event without a type");
      continue;
    }
    const std::string wrong = wrong_state(component, message.payload);
    if (!wrong.empty()) complain(wrong);
    if (component.state_class != "total_increasing" || message.payload == "None") continue;
    const double now = std::stod(message.payload);
    const auto [before, is_first] = totals_.emplace(component.unique_id, now);
    if (!is_first && now < before->second) {
      complain(key + " fell from " + std::to_string(before->second) + " to " + message.payload);
    }
    before->second = now;
  }
}

void HubCapture::compare_with_retained(const std::vector<Message>& retained,
                                       const std::string& kept_below,
                                       const std::set<std::string>& present) {
  std::map<std::string, std::string> kept;
  for (const Message& message : retained) {
    if (message.retained && !message.payload.empty()) kept[message.topic] = message.payload;
  }
  for (const auto& [topic, payload] : kept) {
    if (is_config(topic) && topic != device_topic_) complain("a config of nobody: " + topic);
    if (!topic.starts_with(kept_below)) continue;
    const std::string thing = thing_of(topic.substr(kept_below.size()));
    if (!present.contains(thing)) complain("retained, but there is no " + thing + ": " + topic);
  }
  if (!components_.empty() && !kept.contains(device_topic_)) complain("the config is not retained");
  for (const auto& [key, component] : components_) {
    const bool is_event = component.platform == "event";
    if (!component.state_topic.empty() && kept.contains(component.state_topic) == is_event) {
      complain(is_event ? "a retained event" : key + " never had a value");
    }
    for (const std::string& topic : component.availability_topics) {
      if (!kept.contains(topic)) complain(key + " waits for " + topic + ", which says nothing");
    }
    if (kept.contains(component.command_topic)) complain("a retained command");
  }
}

}  // namespace tidewright::support
