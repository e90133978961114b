#include "daemon/commands/reckon/unit.hpp"

#include "core/base/customary_units.hpp"

namespace tidewright::commands::reckon {

const UnitWords& words(Unit unit) {
  static constexpr UnitWords plain{"", "", "", "", 1};
  static constexpr UnitWords litres{"l", "L", "gal", "US gal", litres_per_gallon};
  static constexpr UnitWords litres_per_hour{"l-h", "L/h", "gal-day", "US gal/day",
                                             litres_per_gallon / 24};
  static constexpr UnitWords litres_per_day{"l-day", "L/day", "gal-day", "US gal/day",
                                            litres_per_gallon};
  static constexpr UnitWords celsius{"c", "°C", "f", "°F", 1 / 1.8, 32};
  static constexpr UnitWords grams{"g", "g", "lb", "lb", 1000 * kilograms_per_pound};
  static constexpr UnitWords kilograms{"kg", "kg", "lb", "lb", kilograms_per_pound};
  static constexpr UnitWords grams_per_kilogram{"g-kg", "g/kg", "", "", 1};
  static constexpr UnitWords kilograms_per_cubic_metre{"kg-m3", "kg/m³", "", "", 1};
  static constexpr UnitWords metres{"m", "m", "", "", 1};
  static constexpr UnitWords bar{"bar", "bar", "", "", 1};
  static constexpr UnitWords ppm{"ppm", "ppm", "", "", 1};
  static constexpr UnitWords milligrams_per_litre{"mg-l", "mg/L", "", "", 1};
  static constexpr UnitWords milliequivalents_per_litre{"meq-l", "meq/L", "", "", 1};
  static constexpr UnitWords equivalents_per_litre{"eq-l", "eq/L", "", "", 1};
  static constexpr UnitWords millisiemens_per_cm{"ms-cm", "mS/cm", "", "", 1};
  static constexpr UnitWords microsiemens_per_cm{"us-cm", "µS/cm", "", "", 1};
  static constexpr UnitWords percent{"percent", "%", "", "", 1};
  static constexpr UnitWords days{"days", "days", "", "", 1};
  switch (unit) {
    case Unit::litres:
      return litres;
    case Unit::litres_per_hour:
      return litres_per_hour;
    case Unit::litres_per_day:
      return litres_per_day;
    case Unit::celsius:
      return celsius;
    case Unit::grams:
      return grams;
    case Unit::kilograms:
      return kilograms;
    case Unit::grams_per_kilogram:
      return grams_per_kilogram;
    case Unit::kilograms_per_cubic_metre:
      return kilograms_per_cubic_metre;
    case Unit::metres:
      return metres;
    case Unit::bar:
      return bar;
    case Unit::ppm:
      return ppm;
    case Unit::milligrams_per_litre:
      return milligrams_per_litre;
    case Unit::milliequivalents_per_litre:
      return milliequivalents_per_litre;
    case Unit::equivalents_per_litre:
      return equivalents_per_litre;
    case Unit::millisiemens_per_cm:
      return millisiemens_per_cm;
    case Unit::microsiemens_per_cm:
      return microsiemens_per_cm;
    case Unit::percent:
      return percent;
    case Unit::days:
      return days;
    case Unit::none:
    case Unit::text:
      break;
  }
  return plain;
}

double from_customary(Unit unit, double number) {
  return (number - words(unit).offset) * words(unit).factor;
}

double to_customary(Unit unit, double number) {
  return number / words(unit).factor + words(unit).offset;
}

std::string option_name(std::string_view stem, Unit unit, bool customary) {
  const UnitWords& unit_words = words(unit);
  const std::string_view suffix = customary ? unit_words.customary_suffix : unit_words.suffix;
  std::string name = "--" + std::string(stem);
  if (!suffix.empty()) name += "-" + std::string(suffix);
  return name;
}

}  // namespace tidewright::commands::reckon
