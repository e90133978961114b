#include "daemon/hub/plain.hpp"

#include <cmath>
#include <variant>

#include "daemon/hub/json_text.hpp"

namespace tidewright::hub {
namespace {

using report::Field;
using report::Thing;
using report::Unknown;

// The two texts of a value: inside a document, and alone on a topic.
struct Texts {
  std::string json;
  std::string alone;
};

std::string joined(const std::vector<std::string>& list) {
  std::string text;
  for (const std::string& item : list) {
    if (!text.empty()) text += "; ";
    text += item;
  }
  return text;
}

struct Write {
  int decimals = 0;

  Texts operator()(Unknown) const { return {"null", "None"}; }
  Texts operator()(bool value) const {
    const std::string text = value ? "true" : "false";
    return {text, text};
  }
  Texts operator()(double value) const {
    if (!std::isfinite(value)) return (*this)(Unknown{});
    const std::string text = decimal(value, decimals);
    return {text, text};
  }
  Texts operator()(const std::string& text) const {
    return {as_json(text), text.empty() ? "nothing" : text};
  }
  Texts operator()(const std::vector<std::string>& list) const {
    return {as_json(list), list.empty() ? "nothing" : joined(list)};
  }
};

Texts write(const Field& field) { return std::visit(Write{field.decimals}, field.value); }

std::string path(const Thing& thing) {
  return thing.id.empty() ? thing.kind : thing.kind + "/" + thing.id;
}

Message document(const Thing& thing, const std::string& at, const Place& place) {
  ObjectText object;
  object.add("at", as_json(at));
  const std::size_t content_from = object.size();
  for (const Field& field : thing.fields) object.add(field.name, write(field).json);
  return {place.topic(path(thing)), object.closed(), true, content_from};
}

}  // namespace

std::string Place::topic(std::string_view rest) const {
  return base + "/" + room + "/" + std::string(rest);
}

std::string value_path(const Thing& thing, std::string_view field) {
  return "value/" + path(thing) + "/" + std::string(field);
}

std::vector<Message> plain(const report::Report& report, const Place& place) {
  const std::string at = report::wall_time(report.at, report.wall);
  std::vector<Message> messages;
  for (const Thing& thing : report.things) {
    messages.push_back(document(thing, at, place));
    for (const Field& field : thing.fields) {
      messages.push_back({place.topic(value_path(thing, field.name)), write(field).alone});
      const bool* online = std::get_if<bool>(&field.value);
      if (thing.kind == "source" && field.name == "online" && online != nullptr) {
        messages.push_back({place.topic(path(thing) + "/online"), *online ? "online" : "offline"});
      }
    }
  }
  return messages;
}

Message plain(const report::Message& announcement, const Place& place, const WallClock& wall) {
  ObjectText object;
  object.add("at", as_json(report::wall_time(announcement.at, wall)))
      .add("priority", std::to_string(announcement.priority))
      .add("id", as_json(announcement.id))
      .add("occurrence", std::to_string(announcement.occurrence))
      .add("event", as_json(announcement.event))
      .add("event_type", as_json(announcement.event))
      .add("title", as_json(announcement.title))
      .add("text", as_json(announcement.text));
  return {place.topic("announcement"), object.closed(), false};
}

}  // namespace tidewright::hub
