// Numbers that know their unit. A litre cannot be added to a degree, nor an hour lost in a call.
#pragma once

#include <compare>

namespace tidewright {

template <class Unit>
struct Amount {
  double value = 0;

  friend constexpr auto operator<=>(const Amount&, const Amount&) = default;
  friend constexpr Amount operator+(Amount a, Amount b) { return {a.value + b.value}; }
  friend constexpr Amount operator-(Amount a, Amount b) { return {a.value - b.value}; }
  friend constexpr Amount operator*(Amount a, double factor) { return {a.value * factor}; }
  friend constexpr Amount operator*(double factor, Amount a) { return {a.value * factor}; }
  friend constexpr Amount operator/(Amount a, double divisor) { return {a.value / divisor}; }
  friend constexpr double operator/(Amount a, Amount b) { return a.value / b.value; }
  constexpr Amount& operator+=(Amount other) {
    value += other.value;
    return *this;
  }
};

using Litres = Amount<struct LitresUnit>;
using LitresPerHour = Amount<struct LitresPerHourUnit>;
using PartsPerMillion = Amount<struct PartsPerMillionUnit>;
using Celsius = Amount<struct CelsiusUnit>;  // ITS-90
using Watts = Amount<struct WattsUnit>;
using Metres = Amount<struct MetresUnit>;
using Bars = Amount<struct BarsUnit>;
using Kilograms = Amount<struct KilogramsUnit>;
using KilogramsPerCubicMetre = Amount<struct KilogramsPerCubicMetreUnit>;
using GramsPerKilogram = Amount<struct GramsPerKilogramUnit>;
using MilligramsPerLitre = Amount<struct MilligramsPerLitreUnit>;
using MilliequivalentsPerLitre = Amount<struct MilliequivalentsPerLitreUnit>;
using MicrosiemensPerCm = Amount<struct MicrosiemensPerCmUnit>;
using MillisiemensPerCm = Amount<struct MillisiemensPerCmUnit>;
using JoulesPerKilogram = Amount<struct JoulesPerKilogramUnit>;
using JoulesPerKilogramKelvin = Amount<struct JoulesPerKilogramKelvinUnit>;
using PracticalSalinity = Amount<struct PracticalSalinityUnit>;  // PSS-78: a ratio, no unit

}  // namespace tidewright
