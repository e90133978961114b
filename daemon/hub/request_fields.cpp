#include "daemon/hub/request_fields.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <utility>

#include "config/reader/nearest.hpp"
#include "core/rules/catalogue.hpp"
#include "daemon/hub/json_text.hpp"

namespace tidewright::hub {
namespace {

using nlohmann::json;

constexpr std::string_view make_water = "make_water";
constexpr double minutes_longest = 7 * 24 * 60;

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

Names units_of(room::Quantity quantity) {
  switch (quantity) {
    case room::Quantity::dissolved_solids:
      return {"ppm"};
    case room::Quantity::temperature:
      return {"°C", "C"};
    case room::Quantity::level:
      return {"L", "%"};
    case room::Quantity::flow:
      return {"L/h"};
    case room::Quantity::water_count:
      return {"L"};
    case room::Quantity::pressure:
      return {"bar"};
    default:
      return {};
  }
}

}  // namespace

std::string guess(std::string_view written, const Names& known) {
  const std::string_view best = config::nearest(written, known);
  return best.empty() ? "" : fmt::format(" Did you mean {}?", as_json(best));
}

void Fields::refuse(std::string why) {
  if (!refusal_) refusal_ = std::move(why);
}

bool Fields::has(std::string_view name) const { return object_.contains(name); }

std::string Fields::text(std::string_view name, std::size_t longest) {
  if (!has(name)) return "";
  const json& value = object_.at(std::string(name));
  if (value.is_string() && is_plain_text(value.get<std::string>(), longest)) {
    return value.get<std::string>();
  }
  expected(name, fmt::format("a text of 1 to {} characters, in quotation marks", longest));
  return "";
}

double Fields::number(std::string_view name, double low, double high,
                      std::string_view expectation) {
  if (!has(name)) return 0;
  const json& value = object_.at(std::string(name));
  const double read = value.is_number() ? value.get<double>() : std::nan("");
  if (read >= low && read <= high) return read;
  expected(name, expectation);
  return 0;
}

std::uint32_t Fields::whole_number(std::string_view name, double high) {
  const double read = number(name, 1, high, "a whole number above 0, without quotation marks");
  if (read != std::floor(read)) expected(name, "a whole number");
  return static_cast<std::uint32_t>(read);
}

Duration Fields::minutes() {
  const double read = number("minutes", 1, minutes_longest,
                             "a number of minutes from 1 to 10080, without quotation marks");
  return Duration{std::llround(read * 60'000)};
}

room::RuleId Fields::alarm() {
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

room::InstrumentIndex Fields::instrument() {
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

room::ActuatorIndex Fields::actuator() {
  if (!has("actuator")) return no_subject;
  const std::string id = text("actuator", 64);
  if (refusal_) return no_subject;
  Names known;
  for (const room::Actuator& each : household_.room.actuators) known.push_back(each.id);
  const auto found = std::find(known.begin(), known.end(), id);
  if (found != known.end()) return static_cast<room::ActuatorIndex>(found - known.begin());
  refuse(fmt::format("There is no actuator {}.{} The actuators are: {}.", as_json(id),
                     guess(id, known), fmt::join(known, ", ")));
  return no_subject;
}

room::CauseId Fields::cause() {
  if (!has("cause")) return {};
  const std::string id = text("cause", 64);
  if (refusal_) return {};
  const auto& known = room::cause_names;
  const auto found = std::find(known.begin(), known.end(), id);
  if (found != known.end()) return static_cast<room::CauseId>(found - known.begin());
  refuse(fmt::format("There is no cause {}.{} The causes are: {}.", as_json(id),
                     guess(id, Names(known.begin(), known.end())), fmt::join(known, ", ")));
  return {};
}

room::ActuatorIndex Fields::what() {
  if (!has("what")) return no_subject;
  const std::string id = text("what", 64);
  if (refusal_ || id == make_water) return no_subject;
  Names known;
  for (const room::Actuator& each : household_.room.actuators) known.push_back(each.id);
  const auto found = std::find(known.begin(), known.end(), id);
  if (found != known.end()) return static_cast<room::ActuatorIndex>(found - known.begin());
  known.insert(known.begin(), make_water);
  refuse(fmt::format("There is no {} to start or stop.{} Known are: {}.", as_json(id),
                     guess(id, known), fmt::join(known, ", ")));
  return no_subject;
}

room::SupplyIndex Fields::supply() {
  if (!has("supply")) return no_subject;
  const std::string id = text("supply", 64);
  if (refusal_) return no_subject;
  Names known;
  for (const room::Supply& each : household_.room.supplies) known.push_back(each.id);
  const auto found = std::find(known.begin(), known.end(), id);
  if (found != known.end()) return static_cast<room::SupplyIndex>(found - known.begin());
  refuse(known.empty()
             ? fmt::format("There is no supply {}: the household's file has no [supply.<name>].",
                           as_json(id))
             : fmt::format("There is no supply {}.{} The supplies are: {}.", as_json(id),
                           guess(id, known), fmt::join(known, ", ")));
  return no_subject;
}

double Fields::in_stock() {
  return number("value", 0, 1e6, "a number from 0 to 1000000, without quotation marks");
}

double Fields::measured(room::InstrumentIndex index) {
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

void Fields::expected(std::string_view name, std::string_view expectation) {
  refuse(fmt::format("\"{}\" is {}. Expected {}.", name, shown(object_.at(std::string(name))),
                     expectation));
}

}  // namespace tidewright::hub
