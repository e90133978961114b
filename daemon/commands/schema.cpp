#include "daemon/commands/schema.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <nlohmann/json.hpp>
#include <span>

#include "config/reader/keys.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::commands {
namespace {

using Json = nlohmann::ordered_json;
using config::Key;
using config::Kind;
using config::Part;
using Parts = std::span<const Part>;

constexpr const char* id_pattern = "^[a-z0-9_-]{1,64}$";

Json text(const char* pattern = nullptr) {
  Json schema{{"type", "string"}, {"minLength", 1}};
  if (pattern != nullptr) schema["pattern"] = pattern;
  return schema;
}

Json list_of(const Json& items, int least) {
  return {{"type", "array"}, {"items", items}, {"minItems", least}};
}

Json either(const Json& one, const Json& other) { return {{"anyOf", {one, other}}}; }

Json one_of(std::string_view choices) {
  Json words = Json::array();
  while (!choices.empty()) {
    const std::size_t bar = choices.find(" | ");
    words.push_back(choices.substr(0, bar));
    choices = bar == std::string_view::npos ? "" : choices.substr(bar + 3);
  }
  return {{"enum", words}};
}

int whole(std::string_view number) {
  int value = 0;
  std::from_chars(number.data(), number.data() + number.size(), value);
  return value;
}

Json table(Parts parts);

// The tables that instruments are written as, once each.
struct Definition {
  const char* name;
  Kind kind;
};
constexpr std::array definitions{
    Definition{"availability", Kind::availability}, Definition{"feedback", Kind::feedback},
    Definition{"float_switch", Kind::float_switch}, Definition{"flow_meter", Kind::flow_meter},
    Definition{"number", Kind::level_gauge},
};

Json reference(const char* name) { return {{"$ref", std::string("#/$defs/") + name}}; }

// A table whose one needed key is its topic may be written as that topic.
Json table_or_topic(Kind kind) {
  const Json whole_table = table(config::parts_of(kind));
  const bool topic_is_enough = whole_table["required"] == Json::array({"topic"});
  return topic_is_enough ? either(text("^[^#+]+$"), whole_table) : whole_table;
}

Json instrument(Kind kind) {
  switch (kind) {
    case Kind::flow_meter:
      return reference("flow_meter");
    case Kind::float_switch:
      return reference("float_switch");
    case Kind::feedback:
      return reference("feedback");
    case Kind::availability:
      return reference("availability");
    default:
      return reference("number");
  }
}

Json written(const Key& key) {
  Json quantity = text("^-?[0-9]");
  Json number{{"type", "number"}};
  switch (key.kind) {
    case Kind::id:
      return text(id_pattern);
    case Kind::topic:
      return text("^[^#+]+$");
    case Kind::pointer:
      return {{"type", "string"}, {"pattern", "^(/.*)?$"}};
    case Kind::hours:
      return text("^[0-9]{1,2}:[0-9]{2}-[0-9]{1,2}:[0-9]{2}$");
    case Kind::text:
    case Kind::own_unit:
      return text();
    case Kind::words:
      return either(text(), list_of(text(), 1));
    case Kind::sentence:
      return {{"const", key.example}};
    case Kind::choice:
      return one_of(key.example);
    case Kind::yes_no:
      return {{"type", "boolean"}};
    case Kind::count:
      return {{"type", "integer"}, {"minimum", whole(key.low)}, {"maximum", whole(key.high)}};
    case Kind::number:
      return number;
    case Kind::volume:
    case Kind::level:
    case Kind::share:
    case Kind::time:
    case Kind::flow:
    case Kind::temperature:
    case Kind::power:
    case Kind::pressure:
      return quantity;
    case Kind::solids:
    case Kind::own_step:
      return either(quantity, number);
    case Kind::own_range:
      return {{"type", "array"}, {"items", quantity}, {"minItems", 2}, {"maxItems", 2}};
    case Kind::own_points:
      return list_of({{"type", "array"}, {"prefixItems", {number, quantity}}, {"minItems", 2}}, 2);
    default:
      return instrument(key.kind);
  }
}

Json property(const Key& key) {
  Json schema = written(key);
  std::string help(key.help);
  if (!key.low.empty()) help += fmt::format(" From {} to {}.", key.low, key.high);
  if (!key.standard.empty()) help += fmt::format(" If not given: {}.", key.standard);
  schema["description"] = help;
  const bool shown = !key.example.empty() && schema.value("type", "") == "string";
  if (shown) schema["examples"] = {key.example};
  return schema;
}

Json table(Parts parts) {
  Json properties = Json::object();
  Json required = Json::array();
  for (const Key& key : config::keys()) {
    if (std::find(parts.begin(), parts.end(), key.part) == parts.end()) continue;
    properties[std::string(key.name)] = property(key);
    if (key.need == config::Need::required) required.push_back(key.name);
  }
  return {{"type", "object"},
          {"properties", properties},
          {"required", required},
          {"additionalProperties", false}};
}

Json names_of(const config::SectionKind& section) {
  if (section.parts.front() != Part::rule) return {{"pattern", id_pattern}};
  Json names = Json::array();
  for (const rules::Rule* rule : rules::catalogue) names.push_back(rule->name);
  return {{"enum", names}};
}

}  // namespace

std::string household_schema() {
  constexpr std::array file_part{Part::file};
  Json file = table(file_part);
  for (const config::SectionKind& section : config::section_kinds()) {
    Json schema = table(section.parts);
    if (section.named) {
      schema = {{"type", "object"},
                {"propertyNames", names_of(section)},
                {"additionalProperties", schema}};
    }
    file["properties"][std::string(section.name)] = schema;
  }
  Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
              {"title", "A household's file for Tidewright"},
              {"description", "Made by `tidewright list schema`; a test compares."}};
  schema.update(file);
  for (const auto& [name, kind] : definitions) schema["$defs"][name] = table_or_topic(kind);
  return schema.dump(2) + '\n';
}

}  // namespace tidewright::commands
