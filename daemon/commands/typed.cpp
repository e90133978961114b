#include "daemon/commands/typed.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string_view>

#include "config/reader/nearest.hpp"
#include "daemon/hub/request_kinds.hpp"

namespace tidewright::commands {
namespace {

using Json = nlohmann::ordered_json;
using hub::RequestKind;

// Of the fields that are typed as words.
bool may_be_left_out(std::string_view field) { return field == "unit" || field == "what"; }

// The fields that are typed as words, in their order; the rest are options.
std::vector<std::string_view> positions(const RequestKind& kind) {
  std::vector<std::string_view> fields;
  for (const std::string_view field : kind.required) {
    if (field != "minutes" && field != "why") fields.push_back(field);
  }
  for (const std::string_view field : kind.optional) {
    if (may_be_left_out(field)) fields.push_back(field);
  }
  return fields;
}

bool allows(const RequestKind& kind, std::string_view field) {
  const auto holds = [&](const std::vector<std::string_view>& fields) {
    return std::find(fields.begin(), fields.end(), field) != fields.end();
  };
  return holds(kind.required) || holds(kind.optional);
}

bool needs(const RequestKind& kind, std::string_view field) {
  return std::find(kind.required.begin(), kind.required.end(), field) != kind.required.end();
}

// `tidewright ask shelve ALARM --minutes MINUTES --who NAME`
std::string pattern(hub::Verb verb, const RequestKind& kind) {
  std::string text = fmt::format("tidewright {} {}", hub::verb_name(verb), kind.name);
  for (const std::string_view field : positions(kind)) {
    std::string word(field);
    std::transform(word.begin(), word.end(), word.begin(),
                   [](char c) { return static_cast<char>(c - 'a' + 'A'); });
    text += may_be_left_out(field) ? " [" + word + "]" : " " + word;
  }
  if (allows(kind, "minutes")) {
    text += needs(kind, "minutes") ? " --minutes MINUTES" : " [--minutes MINUTES]";
  }
  if (allows(kind, "occurrence")) text += " [--occurrence NUMBER]";
  if (allows(kind, "why")) text += needs(kind, "why") ? " --why TEXT" : " [--why TEXT]";
  return text + " --who NAME";
}

Usage unknown(const Typed& typed) {
  std::vector<std::string_view> names;
  std::string patterns;
  for (const RequestKind& kind : hub::request_kinds(typed.verb)) {
    names.push_back(kind.name);
    patterns += "  " + pattern(typed.verb, kind) + "\n";
  }
  const std::string written = typed.words.empty() ? "" : typed.words.front();
  std::string problem =
      written.empty() ? "Nothing was asked for." : fmt::format("\"{}\" is not known.", written);
  const std::string_view meant = config::nearest(written, names);
  if (!meant.empty()) problem += fmt::format(" Did you mean \"{}\"?", meant);
  return {problem + " It can be:\n" + patterns};
}

// A number where it is one, else the text: the daemon says what it expected.
Json number_or_text(const std::string& word) {
  Json value = Json::parse(word, nullptr, false);
  return value.is_number() ? value : Json(word);
}

Json field_value(std::string_view field, const std::string& word) {
  return field == "value" || field == "token" ? number_or_text(word) : Json(word);
}

std::string dumped(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

std::variant<std::string, Usage> as_request(const Typed& typed, const std::string& id) {
  const auto kinds = hub::request_kinds(typed.verb);
  const auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const RequestKind& each) {
    return !typed.words.empty() && each.name == typed.words.front();
  });
  if (kind == kinds.end()) return unknown(typed);

  const auto fields = positions(*kind);
  const std::size_t given = typed.words.size() - 1;
  const auto optional = std::count_if(fields.begin(), fields.end(), may_be_left_out);
  const std::size_t needed = fields.size() - static_cast<std::size_t>(optional);
  const bool wrong_option = (needs(*kind, "why") && typed.why.empty()) ||
                            (typed.minutes && !allows(*kind, "minutes")) ||
                            (typed.occurrence && !allows(*kind, "occurrence")) ||
                            (!typed.why.empty() && !allows(*kind, "why"));
  if (given < needed || given > fields.size() || wrong_option) {
    return Usage{"It is typed like this:\n  " + pattern(typed.verb, *kind) + "\n"};
  }
  Json request{{std::string(hub::verb_name(typed.verb)), std::string(kind->name)}};
  for (std::size_t i = 0; i < given; ++i) {
    request[std::string(fields[i])] = field_value(fields[i], typed.words[i + 1]);
  }
  if (typed.minutes) request["minutes"] = *typed.minutes;
  if (typed.occurrence) request["occurrence"] = *typed.occurrence;
  if (!typed.why.empty()) request["why"] = typed.why;
  request["who"] = typed.who;
  request["id"] = id;
  return dumped(request);
}

std::string confirmation(const Typed& reset, std::uint32_t token, const std::string& id) {
  const bool bypass = reset.words.at(0) == "bypass";
  return dumped({{"ask", bypass ? "confirm_bypass" : "confirm"},
                 {bypass ? "cause" : "alarm", reset.words.at(1)},
                 {"token", token},
                 {"who", reset.who},
                 {"id", id}});
}

}  // namespace tidewright::commands
