#include "daemon/hub/request.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <vector>

#include "config/reader/nearest.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/hub/json_text.hpp"
#include "daemon/hub/request_kinds.hpp"

namespace tidewright::hub {
namespace {

using nlohmann::json;
using Names = std::vector<std::string_view>;

constexpr std::string_view what_can_be_started = "make_water";
constexpr double minutes_longest = 7 * 24 * 60;

// What the person meant, if it can be guessed: ` Did you mean "leak"?`
std::string guess(std::string_view written, const Names& known) {
  const std::string_view best = config::nearest(written, known);
  return best.empty() ? "" : fmt::format(" Did you mean {}?", as_json(best));
}

std::string shown(const json& value) {
  constexpr std::size_t enough = 60;
  std::string text = value.dump(-1, ' ', false, json::error_handler_t::replace);
  if (text.size() > enough) text = "something long";
  return text;
}

bool is_plain_text(const std::string& text, std::size_t longest) {
  return !text.empty() && text.size() <= longest &&
         std::none_of(text.begin(), text.end(),
                      [](char c) { return static_cast<unsigned char>(c) < ' ' || c == '\x7f'; });
}

// Reads the fields of one request; keeps the first thing that is wrong.
class Fields {
 public:
  Fields(const json& object, const config::Household& household)
      : object_(object), household_(household) {}

  const std::optional<std::string>& refusal() const { return refusal_; }
  void refuse(std::string why) {
    if (!refusal_) refusal_ = std::move(why);
  }
  bool has(std::string_view name) const { return object_.contains(name); }

  // A text of 1 to `longest` bytes; empty where it is missing (the caller has checked that).
  std::string text(std::string_view name, std::size_t longest) {
    if (!has(name)) return "";
    const json& value = object_.at(std::string(name));
    if (value.is_string() && is_plain_text(value.get<std::string>(), longest)) {
      return value.get<std::string>();
    }
    expected(name, fmt::format("a text of 1 to {} characters, in quotation marks", longest));
    return "";
  }

  double number(std::string_view name, double low, double high, std::string_view of_what) {
    if (!has(name)) return 0;
    const json& value = object_.at(std::string(name));
    const double read = value.is_number() ? value.get<double>() : std::nan("");
    if (read >= low && read <= high) return read;
    expected(name, of_what);
    return 0;
  }

  std::uint32_t whole_number(std::string_view name, double high) {
    const double read = number(name, 1, high, "a whole number above 0, without quotation marks");
    if (read != std::floor(read)) expected(name, "a whole number");
    return static_cast<std::uint32_t>(read);
  }

  Duration minutes() {
    const double read = number("minutes", 1, minutes_longest,
                               "a number of minutes from 1 to 10080, without quotation marks");
    return Duration{std::llround(read * 60'000)};
  }

  room::RuleId alarm() {
    if (!has("alarm")) return {};
    const std::string name = text("alarm", 64);
    if (refusal_) return {};
    Names known;
    for (const rules::Rule* rule : rules::catalogue) {
      if (!rule->applies(household_.room)) continue;
      if (rule->name == name) return rule->id;
      known.push_back(rule->name);
    }
    refuse(fmt::format("There is no alarm {} in this room.{} The alarms are: {}.", as_json(name),
                       guess(name, known), fmt::join(known, ", ")));
    return {};
  }

  room::InstrumentIndex instrument() {
    if (!has("instrument")) return no_subject;
    const std::string id = text("instrument", 64);
    if (refusal_) return no_subject;
    Names known;
    for (const room::Instrument& each : household_.room.instruments) known.push_back(each.id);
    const auto found = std::find(known.begin(), known.end(), id);
    if (found != known.end()) return static_cast<room::InstrumentIndex>(found - known.begin());
    refuse(fmt::format("There is no instrument {}.{} The instruments are: {}.", as_json(id),
                       guess(id, known), fmt::join(known, ", ")));
    return no_subject;
  }

  // What a start or stop is about; there is one thing so far.
  void check_what() {
    if (!has("what") || text("what", 64) == what_can_be_started) return;
    expected("what", as_json(what_can_be_started) + ", or no field \"what\"");
  }

  // A hand measurement in the instrument's own unit. A level must say its unit: a bare 45 may be
  // litres or per cent.
  double measured(room::InstrumentIndex index) {
    constexpr double any = 1e9;
    const double value = number("value", -any, any, "a number, without quotation marks");
    const std::string unit = text("unit", 8);
    if (refusal_) return 0;
    const room::Instrument& instrument = household_.room.instruments[index];
    const Names units = units_of(instrument.quantity);
    if (units.empty()) {
      refuse(
          fmt::format("{} cannot be measured by hand. Measure dissolved solids, temperature or "
                      "level; use \"tested\" for a leak sensor or a float switch.",
                      as_json(instrument.id)));
      return 0;
    }
    const std::string known = fmt::format("\"{}\"", fmt::join(units, "\" or \""));
    if (!has("unit")) {
      if (instrument.quantity == room::Quantity::level) {
        refuse("\"unit\" is missing. Expected " + known + ".");
      }
      return value;
    }
    if (std::find(units.begin(), units.end(), unit) == units.end()) expected("unit", known);
    const bool of_the_vat = unit == "%" && household_.room.vat;
    return of_the_vat ? value / 100 * household_.room.vat->capacity.value : value;
  }

 private:
  void expected(std::string_view name, std::string_view expectation) {
    refuse(fmt::format("\"{}\" is {}. Expected {}.", name, shown(object_.at(std::string(name))),
                       expectation));
  }

  static Names units_of(room::Quantity quantity) {
    switch (quantity) {
      case room::Quantity::dissolved_solids:
        return {"ppm"};
      case room::Quantity::temperature:
        return {"°C", "C"};
      case room::Quantity::level:
        return {"L", "%"};
      default:
        return {};
    }
  }

  const json& object_;
  const config::Household& household_;
  std::optional<std::string> refusal_;
};

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
  fields.check_what();
  return ask;
}

Tell read_tell(TellKind kind, Fields& fields) {
  Tell tell;
  tell.kind = kind;
  tell.instrument = fields.instrument();
  if (kind == TellKind::measured && !fields.refusal()) {
    tell.value = fields.measured(tell.instrument);
  }
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
