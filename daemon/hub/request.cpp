#include "daemon/hub/request.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <vector>

#include "daemon/hub/json_text.hpp"
#include "daemon/hub/request_fields.hpp"
#include "daemon/hub/request_kinds.hpp"

namespace tidewright::hub {
namespace {

using nlohmann::json;

// The document, if it is one object that names no key twice.
std::optional<json> parsed(std::string_view text) {
  std::vector<std::set<std::string>> keys;
  bool twice = false;
  const auto watch = [&](int /*depth*/, json::parse_event_t event, json& value) {
    if (event == json::parse_event_t::object_start) keys.emplace_back();
    if (event == json::parse_event_t::object_end) keys.pop_back();
    if (event == json::parse_event_t::key) {
      twice = !keys.back().insert(value.get<std::string>()).second || twice;
    }
    return true;
  };
  json document = json::parse(text, watch, false);
  if (!document.is_object() || twice) return std::nullopt;
  return document;
}

std::string example(Verb verb) {
  return verb == Verb::ask ? R"({"ask": "reset", "alarm": "leak", "who": "ann"})"
                           : R"({"tell": "rotated", "who": "ann"})";
}

const RequestKind* find_kind(Verb verb, std::string_view name) {
  const auto kinds = request_kinds(verb);
  const auto found = std::find_if(kinds.begin(), kinds.end(),
                                  [&](const RequestKind& kind) { return kind.name == name; });
  return found == kinds.end() ? nullptr : &*found;
}

std::string unknown_kind(Verb verb, std::string_view name) {
  Names known;
  for (const RequestKind& kind : request_kinds(verb)) known.push_back(kind.name);
  return fmt::format("\"{}\" is {}, which is not known.{} Known are: {}.", verb_name(verb),
                     as_json(name), guess(name, known), fmt::join(known, ", "));
}

// Every field that is missing or not known to this kind of request.
void check_names(const json& object, Verb verb, const RequestKind& kind, Fields& fields) {
  Names known{verb_name(verb), "who", "id"};
  known.insert(known.end(), kind.required.begin(), kind.required.end());
  known.insert(known.end(), kind.optional.begin(), kind.optional.end());
  for (const auto& [name, value] : object.items()) {
    if (std::find(known.begin(), known.end(), name) != known.end()) continue;
    fields.refuse(fmt::format("{} is not a field of \"{}\".{} Its fields are: {}.",
                              as_json(std::string_view(name)), kind.name, guess(name, known),
                              fmt::join(known, ", ")));
  }
  Names required{"who"};
  required.insert(required.begin(), kind.required.begin(), kind.required.end());
  for (const std::string_view name : required) {
    if (object.contains(name)) continue;
    fields.refuse(fmt::format("\"{}\" is missing. \"{}\" needs: {}.", name, kind.name,
                              fmt::join(required, ", ")));
  }
}

Ask read_ask(AskKind kind, Fields& fields) {
  Ask ask;
  ask.kind = kind;
  ask.alarm = fields.alarm();
  ask.occurrence = fields.whole_number("occurrence", 4e9);
  ask.lasting = fields.minutes();
  ask.token = fields.whole_number("token", 999'999);
  ask.who = Name(fields.text("who", 31));
  ask.why = Remark(fields.text("why", 95));
  ask.cause = fields.cause();
  ask.actuator = kind == AskKind::test_lease ? fields.actuator() : fields.what();
  return ask;
}

Tell read_tell(TellKind kind, Fields& fields) {
  Tell tell;
  tell.kind = kind;
  tell.instrument = fields.instrument();
  if (kind == TellKind::measured && !fields.refusal()) {
    tell.value = fields.measured(tell.instrument);
  }
  tell.supply = fields.supply();
  if (kind == TellKind::stocked) tell.value = fields.in_stock();
  tell.who = Name(fields.text("who", 31));
  return tell;
}

}  // namespace

Request read_request(Verb verb, std::string_view text, const config::Household& household) {
  Request request{{verb, "", ""}, std::string{}};
  const auto object = parsed(text);
  if (!object) {
    request.content = "This is not one JSON object with each field once. Expected for example " +
                      example(verb) + ".";
    return request;
  }
  Fields fields(*object, household);
  if (!fields.has(verb_name(verb))) {
    request.content =
        fmt::format("\"{}\" is missing. Expected for example {}.", verb_name(verb), example(verb));
    return request;
  }
  request.about.what = fields.text(verb_name(verb), 32);
  request.about.id = fields.text("id", 64);
  const RequestKind* kind = find_kind(verb, request.about.what);
  if (kind == nullptr) {
    fields.refuse(unknown_kind(verb, request.about.what));
  } else {
    check_names(*object, verb, *kind, fields);
    if (const auto* ask = std::get_if<AskKind>(&kind->kind)) {
      request.content = read_ask(*ask, fields);
    } else {
      request.content = read_tell(std::get<TellKind>(kind->kind), fields);
    }
  }
  if (fields.refusal()) request.content = *fields.refusal();
  return request;
}

}  // namespace tidewright::hub
