// United States customary units, for those who type or read them: all that is computed is metric.
// Exact by definition: NIST Handbook 44, appendix C; NIST Special Publication 811, appendix B.
#pragma once

#include "core/base/units.hpp"

namespace tidewright {

using Gallons = Amount<struct GallonsUnit>;  // US liquid gallon: 231 cubic inches
using Pounds = Amount<struct PoundsUnit>;    // avoirdupois
using Fahrenheit = Amount<struct FahrenheitUnit>;

inline constexpr double litres_per_gallon = 3.785411784;
inline constexpr double kilograms_per_pound = 0.45359237;
inline constexpr double bars_per_psi = 0.06894757;  // SP 811, appendix B.8, to seven digits
inline constexpr double milligrams_per_grain = 64.79891;
inline constexpr double mg_l_per_grain_per_gallon = milligrams_per_grain / litres_per_gallon;

constexpr Litres litres(Gallons amount) { return {amount.value * litres_per_gallon}; }
constexpr Gallons gallons(Litres amount) { return {amount.value / litres_per_gallon}; }
constexpr Kilograms kilograms(Pounds amount) { return {amount.value * kilograms_per_pound}; }
constexpr Pounds pounds(Kilograms amount) { return {amount.value / kilograms_per_pound}; }
constexpr Celsius celsius(Fahrenheit amount) { return {(amount.value - 32) / 1.8}; }
constexpr Fahrenheit fahrenheit(Celsius amount) { return {amount.value * 1.8 + 32}; }

}  // namespace tidewright
