#include "daemon/hub/homie.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

#include "daemon/hub/json_text.hpp"
#include "daemon/store/checksum.hpp"

namespace tidewright::hub {
namespace {

using report::Thing;

// Ids are of small letters, digits and hyphens.
std::string as_id(std::string_view text) {
  std::string id(text);
  std::replace(id.begin(), id.end(), '_', '-');
  return id;
}

std::string node_of(const Offer& offer) {
  if (offer.shape == Shape::story) return "announcement";
  return offer.node.empty() ? "request" : as_id(offer.node);
}

std::string property_of(const Offer& offer) {
  const bool is_shown = !offer.node.empty();
  return as_id(std::string_view(offer.key).substr(is_shown ? offer.node.size() + 1 : 0));
}

std::string topic_of(const Offer& offer, const Manifest& manifest) {
  return fmt::format("{}/{}/{}", homie_device(manifest), node_of(offer), property_of(offer));
}

bool is_settable(const Offer& offer) {
  return offer.shape == Shape::press || offer.shape == Shape::entry;
}

std::string_view datatype(Shape shape) {
  switch (shape) {
    case Shape::measure:
    case Shape::total:
    case Shape::entry:
      return "float";
    case Shape::word:
    case Shape::press:
      return "enum";
    case Shape::text:
      return "string";
    case Shape::moment:
    case Shape::day:
      return "datetime";
    case Shape::fact:
      return "boolean";
    case Shape::story:
      return "json";
  }
  return "string";
}

// What a press is set to.
constexpr std::string_view pressed = "press";

std::string format_of(const Offer& offer) {
  if (offer.shape == Shape::press) return std::string(pressed);
  if (offer.shape == Shape::entry) {
    return fmt::format("{}:{}", decimal(offer.low, 1), decimal(offer.high, 1));
  }
  std::string format;
  for (const std::string_view option : offer.options) {
    if (!format.empty()) format += ',';
    format += option;
  }
  return format;
}

std::string property(const Offer& offer) {
  ObjectText object;
  object.add("name", as_json(offer.name)).add("datatype", as_json(datatype(offer.shape)));
  if (const std::string format = format_of(offer); !format.empty()) {
    object.add("format", as_json(format));
  }
  if (!offer.unit.empty()) object.add("unit", as_json(offer.unit));
  if (is_settable(offer)) object.add("settable", "true");
  if (is_settable(offer) || offer.shape == Shape::story) object.add("retained", "false");
  return object.closed();
}

// The nodes in the order of their first property; offers of one node stand together.
std::string nodes(const std::vector<Offer>& offers) {
  ObjectText all;
  for (auto first = offers.begin(); first != offers.end();) {
    const std::string node = node_of(*first);
    ObjectText properties;
    auto each = first;
    for (; each != offers.end() && node_of(*each) == node; ++each) {
      properties.add(property_of(*each), property(*each));
    }
    all.add(node, ObjectText().add("properties", properties.closed()).closed());
    first = each;
  }
  return all.closed();
}

// Its version is its checksum: another document has another one, the same document the same.
std::string description(const std::vector<Offer>& offers, const config::Household& household) {
  const std::string all = nodes(offers);
  const std::string name = "Tidewright " + household.room.id;
  return ObjectText()
      .add("homie", as_json("5.0"))
      .add("version", std::to_string(store::checksum(name + all)))
      .add("name", as_json(name))
      .add("nodes", all)
      .closed();
}

// An empty text is one byte of value 0: an empty message would delete its topic.
struct Payload {
  int decimals = 0;

  std::string operator()(report::Unknown) const { return ""; }
  std::string operator()(bool value) const { return value ? "true" : "false"; }
  std::string operator()(double value) const { return decimal(value, decimals); }
  std::string operator()(const std::string& text) const {
    return text.empty() ? std::string(1, '\0') : text;
  }
  std::string operator()(const std::vector<std::string>& /*list*/) const { return ""; }
};

const report::Value* value_of(const Thing& thing, std::string_view name) {
  for (const report::Field& field : thing.fields) {
    if (field.name == name) return &field.value;
  }
  return nullptr;
}

bool holds(const Thing& thing, std::string_view name) {
  const report::Value* value = value_of(thing, name);
  return value != nullptr && *value == report::Value{true};
}

std::string text_of(const Thing& thing, std::string_view name) {
  const report::Value* value = value_of(thing, name);
  const auto* text = value == nullptr ? nullptr : std::get_if<std::string>(value);
  return text == nullptr ? std::string{} : *text;
}

}  // namespace

std::string homie_device(const Manifest& manifest) {
  return "homie/5/tidewright-" + manifest.instance;
}

std::vector<Message> homie(const std::vector<Offer>& offers, const View& view,
                           const Manifest& manifest) {
  const std::string device = homie_device(manifest);
  std::vector<Message> messages{{device + "/$description", description(offers, view.household)}};
  for (const Offer& offer : offers) {
    if (offer.field == nullptr) continue;
    std::string payload = std::visit(Payload{offer.field->decimals}, offer.field->value);
    if (!payload.empty()) messages.push_back({topic_of(offer, manifest), std::move(payload)});
  }
  for (const Thing& thing : view.report.things) {
    if (thing.kind != "alarm" || !(holds(thing, "active") || holds(thing, "latched"))) continue;
    messages.push_back({fmt::format("{}/$alert/{}", device, as_id(thing.id)),
                        fmt::format("{}: {}", text_of(thing, "title"), text_of(thing, "why"))});
  }
  return messages;
}

std::optional<HomieSet> homie_set(const std::vector<Offer>& offers, const Manifest& manifest,
                                  const Letter& letter, std::string_view topic) {
  for (const Offer& offer : offers) {
    if (!is_settable(offer) || topic != topic_of(offer, manifest) + "/set") continue;
    HomieSet set{letter, {topic_of(offer, manifest), letter.payload, false}};
    set.letter.verb = offer.topic.ends_with("/tell") ? Verb::tell : Verb::ask;
    if (offer.shape == Shape::press) {
      if (letter.payload != pressed) return std::nullopt;
      set.letter.payload = offer.request;
      return set;
    }
    double number = 0;
    const char* const end = letter.payload.data() + letter.payload.size();
    const auto read = std::from_chars(letter.payload.data(), end, number);
    if (read.ec != std::errc{} || read.ptr != end || !std::isfinite(number)) return std::nullopt;
    set.letter.payload = offer.request + fmt::format("{}", number) + offer.request_end;
    return set;
  }
  return std::nullopt;
}

Message homie(const report::Message& announcement, const WallClock& wall,
              const config::Household& household, const Manifest& manifest) {
  const Place place{household.base, household.room.id};
  return {homie_device(manifest) + "/announcement/announcement",
          plain(announcement, place, wall).payload, false};
}

}  // namespace tidewright::hub
