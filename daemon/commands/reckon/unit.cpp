#include "daemon/commands/reckon/unit.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "core/base/customary_units.hpp"

namespace tidewright::commands::reckon {

namespace {

struct Row {
  Unit unit;
  UnitWords words;
};

constexpr std::array rows{
    Row{Unit::litres, {"l", "L", "gal", "US gal", litres_per_gallon}},
    Row{Unit::litres_per_hour, {"l-h", "L/h", "gal-day", "US gal/day", litres_per_gallon / 24}},
    Row{Unit::celsius, {"c", "°C", "f", "°F", 1 / 1.8, 32}},
    Row{Unit::milligrams, {"mg", "mg"}},
    Row{Unit::grams, {"g", "g", "lb", "lb", 1000 * kilograms_per_pound}},
    Row{Unit::kilograms, {"kg", "kg", "lb", "lb", kilograms_per_pound}},
    Row{Unit::grams_per_kilogram, {"g-kg", "g/kg"}},
    Row{Unit::kilograms_per_cubic_metre, {"kg-m3", "kg/m³"}},
    Row{Unit::metres, {"m", "m"}},
    Row{Unit::bar, {"bar", "bar"}},
    Row{Unit::ppm, {"ppm", "ppm"}},
    Row{Unit::milligrams_per_litre, {"mg-l", "mg/L"}},
    Row{Unit::calcium_carbonate,
        {"mg-l", "mg/L", "gpg", "grains/US gal", mg_l_per_grain_per_gallon}},
    Row{Unit::milliequivalents_per_litre, {"meq-l", "meq/L"}},
    Row{Unit::equivalents_per_litre, {"eq-l", "eq/L"}},
    Row{Unit::millisiemens_per_cm, {"ms-cm", "mS/cm"}},
    Row{Unit::microsiemens_per_cm, {"us-cm", "µS/cm"}},
    Row{Unit::megohm_cm, {"megohm-cm", "MΩ·cm"}},
    Row{Unit::percent, {"percent", "%"}},
    Row{Unit::minutes, {"min", "min"}},
    Row{Unit::days, {"days", "days"}},
    Row{Unit::none, {}},
    Row{Unit::text, {}},
};

}  // namespace

const UnitWords& words(Unit unit) {
  return std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.unit == unit; })
      ->words;
}

double from_customary(Unit unit, double number) {
  return (number - words(unit).offset) * words(unit).factor;
}

double to_customary(Unit unit, double number) {
  return number / words(unit).factor + words(unit).offset;
}

std::optional<double> read_number(const std::string& text) {
  double value = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value);
  const bool whole = error == std::errc{} && stop == end && std::isfinite(value);
  return whole ? std::optional(value) : std::nullopt;
}

std::string option_name(std::string_view stem, Unit unit, bool customary) {
  const UnitWords& unit_words = words(unit);
  const std::string_view suffix = customary ? unit_words.customary_suffix : unit_words.suffix;
  std::string name = "--" + std::string(stem);
  if (!suffix.empty()) name += "-" + std::string(suffix);
  return name;
}

}  // namespace tidewright::commands::reckon
