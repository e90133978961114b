// How well a household commonly knows what it measures. Common practice and judgement: none was
// measured here, and all are overridden by --known-to.
#pragma once

#include <optional>
#include <string>

#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

inline constexpr Known by_marks{0.01};               // litres, by the marks of a vat or bucket
inline constexpr Known by_thermometer{0, 0.5};       // degrees
inline constexpr Known by_probe{0, 0.6};             // practical salinity: 1 % of its cell, 0.5 °C
inline constexpr Known by_conductivity_meter{0.01};  // of its cell
inline constexpr Known by_solids_meter{0.02, 0.5};   // ppm: of its cell, and the last digit
inline constexpr Known by_bucket_and_clock{0.02};    // flow
inline constexpr Known by_two_flows{0.03};           // recovery, of two such
inline constexpr Known by_gauge{0, 0.2};             // bar
inline constexpr Known by_tape{0, 0.002};            // metres
inline constexpr Known by_kit{0.1};                  // drops that are counted, colours compared
inline constexpr Known by_analysis{0.05};            // of a laboratory; a good meter in its middle
inline constexpr Known by_ph_meter{0, 0.1};          // pH

// The limit of what was typed, or of what was taken for it, in the option's metric unit; 0 if it is
// known exactly. Requires a number typed, or an `otherwise`.
double limit_of(const Option& option, const Inputs& inputs);

// "to 2 % and 0.5 ppm"
std::string words(const Option& option, const Inputs& inputs);

inline constexpr const char* known_to = "--known-to";

// Reads its text, "tank-l=4 change-gal=0.2": limits that the person knows better.
std::optional<Refusal> read_limits(const Quantity& quantity, const std::string& text,
                                   Inputs& inputs);

}  // namespace tidewright::commands::reckon
