#include "config/reader/quantity.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include "core/base/customary_units.hpp"

namespace tidewright::config {
namespace {

constexpr std::array units{
    UnitWord{"L", Dimension::volume},
    UnitWord{"gal", Dimension::volume, litres_per_gallon},
    UnitWord{"l", Dimension::volume},
    UnitWord{"mL", Dimension::volume, 0.001},
    UnitWord{"ml", Dimension::volume, 0.001},
    UnitWord{"%", Dimension::share, 0.01},
    UnitWord{"s", Dimension::time},
    UnitWord{"min", Dimension::time, 60},
    UnitWord{"h", Dimension::time, 3600},
    UnitWord{"days", Dimension::time, 86400},
    UnitWord{"day", Dimension::time, 86400},
    UnitWord{"L/day", Dimension::flow, 1.0 / 24},
    UnitWord{"gal/day", Dimension::flow, litres_per_gallon / 24},
    UnitWord{"L/h", Dimension::flow},
    UnitWord{"L/min", Dimension::flow, 60},
    UnitWord{"mL/min", Dimension::flow, 0.06},
    UnitWord{"m3/h", Dimension::flow, 1000},
    UnitWord{"ppm", Dimension::solids},
    UnitWord{"mg/L", Dimension::solids},
    UnitWord{"°C", Dimension::temperature},
    UnitWord{"°F", Dimension::temperature, 5.0 / 9, -160.0 / 9},
    UnitWord{"C", Dimension::temperature},
    UnitWord{"F", Dimension::temperature, 5.0 / 9, -160.0 / 9},
    UnitWord{"W", Dimension::power},
    UnitWord{"kW", Dimension::power, 1000},
    UnitWord{"bar", Dimension::pressure},
    UnitWord{"mbar", Dimension::pressure, 0.001},
    UnitWord{"kPa", Dimension::pressure, 0.01},
    UnitWord{"psi", Dimension::pressure, bars_per_psi},
};

constexpr std::string_view digits = "0123456789.,-";

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

}  // namespace

std::span<const UnitWord> unit_words() { return units; }

std::string_view name_of(Dimension dimension) {
  switch (dimension) {
    case Dimension::volume:
      return "a volume";
    case Dimension::share:
      return "a share";
    case Dimension::time:
      return "a time";
    case Dimension::flow:
      return "a flow";
    case Dimension::solids:
      return "dissolved solids";
    case Dimension::temperature:
      return "a temperature";
    case Dimension::power:
      return "a power";
    case Dimension::pressure:
      return "a pressure";
  }
  return "";
}

std::optional<double> read_number(std::string_view text) {
  const std::string_view unsigned_text = text.starts_with('-') ? text.substr(1) : text;
  if (unsigned_text.empty() || unsigned_text.front() < '0' || unsigned_text.front() > '9') {
    return std::nullopt;
  }
  double value = 0;
  const char* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (error != std::errc{} || stopped != end) return std::nullopt;
  return value;
}

std::variant<Measure, Misread> read_quantity(std::string_view text) {
  text = trimmed(text);
  const std::size_t split = std::min(text.find_first_not_of(digits), text.size());
  std::string number{text.substr(0, split)};
  std::string unit{trimmed(text.substr(split))};
  if (std::count(number.begin(), number.end(), ',') == 1) {
    std::replace(number.begin(), number.end(), ',', '.');
    if (read_number(number)) return Misread{Misread::Fault::decimal_comma, number, unit};
  }
  const std::optional<double> shown = read_number(number);
  if (!shown) return Misread{Misread::Fault::not_a_number, number, unit};
  if (unit.empty()) return Misread{Misread::Fault::no_unit, number, unit};
  const auto* found =
      std::find_if(units.begin(), units.end(), [&](const UnitWord& u) { return u.word == unit; });
  if (found == units.end()) return Misread{Misread::Fault::unknown_unit, number, unit};
  return Measure{*shown, found};
}

}  // namespace tidewright::config
