// A quantity as people write it in the household's file: a number and its unit, "200 L".
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace tidewright::config {

// What can be measured. Each has one base unit, in which the program reckons.
enum class Dimension : std::uint8_t {
  volume,       // litres
  share,        // of one: 40 % is 0.4
  time,         // seconds
  flow,         // litres per hour
  solids,       // ppm
  temperature,  // degrees Celsius
  power,        // watts
  pressure,     // bars above the air
};

struct UnitWord {
  std::string_view word;
  Dimension dimension{};
  double factor = 1;  // base = shown * factor + offset
  double offset = 0;
};

// Every unit that may be written; of each dimension the usual one first.
std::span<const UnitWord> unit_words();
// "a volume", "a time".
std::string_view name_of(Dimension);

struct Measure {
  double shown = 0;
  const UnitWord* unit = nullptr;
  double in_base() const { return shown * unit->factor + unit->offset; }
  // As a difference of two: a step of 1 °F is 0.56 °C.
  double step_in_base() const { return shown * unit->factor; }
};

struct Misread {
  enum class Fault : std::uint8_t { not_a_number, decimal_comma, no_unit, unknown_unit };
  Fault fault{};
  std::string number;  // as written, the comma made a point
  std::string unit;    // as written
};

// Plain decimal digits with '.', a '-' if need be, then the unit, with or without a space.
std::variant<Measure, Misread> read_quantity(std::string_view text);
// The number alone; none for anything else (no exponent, no NaN, no sign '+').
std::optional<double> read_number(std::string_view text);

}  // namespace tidewright::config
