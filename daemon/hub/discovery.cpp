#include "daemon/hub/discovery.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "daemon/hub/json_text.hpp"

namespace tidewright::hub {
namespace {

std::string_view platform_of(Shape shape) {
  switch (shape) {
    case Shape::fact:
      return "binary_sensor";
    case Shape::press:
      return "button";
    case Shape::entry:
      return "number";
    case Shape::story:
      return "event";
    default:
      return "sensor";
  }
}

std::string node_of(const Manifest& manifest) { return "tidewright_" + manifest.instance; }

std::string available_by(const std::string& topic) {
  return ObjectText().add("topic", as_json(topic)).closed();
}

std::string available_while(const std::string& topic) {
  return ObjectText()
      .add("topic", as_json(topic))
      .add("payload_available", as_json("true"))
      .add("payload_not_available", as_json("false"))
      .closed();
}

// All of them must hold. Without a list of its own a component has the device's: the daemon.
void add_availability(const Offer& offer, const std::string& daemon, ObjectText& component) {
  if (offer.sources.empty() && offer.open_while.empty()) return;
  std::string list = available_by(daemon);
  for (const std::string& source : offer.sources) list += "," + available_by(source);
  if (!offer.open_while.empty()) list += "," + available_while(offer.open_while);
  component.add("availability", "[" + list + "]").add("availability_mode", as_json("all"));
}

void add_measure(const Offer& offer, ObjectText& component) {
  if (!offer.unit.empty()) component.add("unit_of_measurement", as_json(offer.unit));
  const bool grows = offer.shape == Shape::total;
  component.add("state_class", as_json(grows ? "total_increasing" : "measurement"));
}

void add_entry(const Offer& offer, ObjectText& component) {
  component.add("command_topic", as_json(offer.topic))
      .add("command_template", as_json(offer.request + "{{ value }}" + offer.request_end))
      .add("mode", as_json("box"))
      .add("min", decimal(offer.low, 1))
      .add("max", decimal(offer.high, 1))
      .add("step", decimal(offer.step, 1));
  if (!offer.unit.empty()) component.add("unit_of_measurement", as_json(offer.unit));
}

// What its shape needs besides.
void add_shape(const Offer& offer, ObjectText& component) {
  switch (offer.shape) {
    case Shape::measure:
    case Shape::total:
      return add_measure(offer, component);
    case Shape::word:
      component.add("options",
                    as_json(std::vector<std::string>(offer.options.begin(), offer.options.end())));
      return;
    case Shape::fact:
      component.add("payload_on", as_json("true")).add("payload_off", as_json("false"));
      return;
    case Shape::press:
      component.add("command_topic", as_json(offer.topic))
          .add("payload_press", as_json(offer.request));
      return;
    case Shape::entry:
      return add_entry(offer, component);
    case Shape::story:
      component.add("event_types", as_json(std::vector<std::string>{"raised", "reminder", "cleared",
                                                                    "summary", "test", "digest"}));
      return;
    default:
      return;
  }
}

std::string component(const Offer& offer, const config::Household& household,
                      const Manifest& manifest) {
  const std::string_view platform = platform_of(offer.shape);
  const bool is_asked = offer.shape == Shape::press || offer.shape == Shape::entry;
  std::string entity = fmt::format("{}.{}_{}", platform, household.room.id, offer.key);
  std::replace(entity.begin(), entity.end(), '-', '_');
  ObjectText object;
  object.add("platform", as_json(platform))
      .add("unique_id", as_json(fmt::format("{}_{}", node_of(manifest), offer.key)))
      .add("default_entity_id", as_json(entity))
      .add("name", as_json(offer.name));
  if (!is_asked) object.add("state_topic", as_json(offer.topic));
  if (!offer.meaning.empty()) object.add("device_class", as_json(offer.meaning));
  add_shape(offer, object);
  if (offer.aside) object.add("entity_category", as_json("diagnostic"));
  add_availability(offer, household.base + "/online", object);
  return object.closed();
}

std::string device(const config::Household& household, const Manifest& manifest) {
  return ObjectText()
      .add("identifiers", as_json(std::vector<std::string>{node_of(manifest)}))
      .add("name", as_json("Tidewright " + household.room.id))
      .add("manufacturer", as_json("Tidewright"))
      .add("model", as_json("Water room"))
      .closed();
}

}  // namespace

Message discovery(const std::vector<Offer>& offers, const config::Household& household,
                  const Manifest& manifest) {
  ObjectText components;
  for (const Offer& offer : offers) {
    components.add(offer.key, component(offer, household, manifest));
  }
  const auto offered = components_of(offers);
  for (const auto& [key, platform] : manifest.components) {
    if (offered.contains(key)) continue;
    components.add(key, ObjectText().add("platform", as_json(platform)).closed());
  }
  const std::string topic =
      fmt::format("{}/device/{}/config", household.hub.prefix, node_of(manifest));
  return {topic, ObjectText()
                     .add("device", device(household, manifest))
                     .add("origin", ObjectText().add("name", as_json("Tidewright")).closed())
                     .add("availability", "[" + available_by(household.base + "/online") + "]")
                     .add("availability_mode", as_json("all"))
                     .add("qos", "1")
                     .add("components", components.closed())
                     .closed()};
}

std::map<std::string, std::string> components_of(const std::vector<Offer>& offers) {
  std::map<std::string, std::string> components;
  for (const Offer& offer : offers) components[offer.key] = platform_of(offer.shape);
  return components;
}

std::string birth_topic(const config::Household& household) {
  return household.hub.prefix + "/status";
}

}  // namespace tidewright::hub
