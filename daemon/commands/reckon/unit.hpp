// The units in which a person types a number and reads one. All that is reckoned is metric; a unit
// may have a US customary one beside it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tidewright::commands::reckon {

enum class Unit : std::uint8_t {
  none,  // a plain number, or practical salinity
  text,  // no number at all
  litres,
  litres_per_hour,
  celsius,
  milligrams,
  grams,
  kilograms,
  grams_per_kilogram,
  kilograms_per_cubic_metre,
  metres,
  bar,
  ppm,
  milligrams_per_litre,
  calcium_carbonate,  // mg/L of it: hardness, alkalinity
  milliequivalents_per_litre,
  equivalents_per_litre,
  millisiemens_per_cm,
  microsiemens_per_cm,
  megohm_cm,
  percent,
  minutes,
  days,
};

struct UnitWords {
  std::string_view suffix{};            // of an option: "l" in --volume-l; empty for none
  std::string_view word{};              // "L"
  std::string_view customary_suffix{};  // "gal"; empty where there is none
  std::string_view customary_word{};    // "US gal"
  double factor = 1;                    // metric = (customary - offset) * factor
  double offset = 0;
};

const UnitWords& words(Unit unit);

double from_customary(Unit unit, double number);
double to_customary(Unit unit, double number);

// The whole text as a finite number, its decimals behind a point.
std::optional<double> read_number(const std::string& text);

// "volume" in litres: "--volume-l", and "--volume-gal" if `customary`.
std::string option_name(std::string_view stem, Unit unit, bool customary = false);

}  // namespace tidewright::commands::reckon
