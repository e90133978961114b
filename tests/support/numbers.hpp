// The functions of core/water, each called with a row of plain numbers: for the tests that throw
// any number at all at them.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <string_view>
#include <type_traits>

#include "core/water/answer.hpp"

namespace tidewright::support {

using Numbers = std::array<double, 16>;

struct Outcome {
  bool answered;  // not refused
  bool finite;    // every number that came out: value, range and what was found outside
};

struct NumberFunction {
  std::string_view name;
  Outcome (*call)(const Numbers& in);
};

template <class T>
bool is_finite(const T& value) {
  if constexpr (std::is_arithmetic_v<T>) {
    return std::isfinite(static_cast<double>(value));
  } else {
    return std::isfinite(value.value);
  }
}

// What came of an answer; a struct of several numbers brings its own is_finite.
template <class T>
Outcome outcome(const water::Answer<T>& answer) {
  bool finite = !answer || is_finite(*answer);
  if (const auto& outside = answer.outside()) {
    finite = finite && std::isfinite(outside->range.low) && std::isfinite(outside->range.high) &&
             std::isfinite(outside->found);
  }
  return {static_cast<bool>(answer), finite};
}

// One of `count` choices, by any number.
inline std::size_t choice(double number, std::size_t count) {
  const double whole = std::fmod(std::abs(number), static_cast<double>(count));
  return whole < static_cast<double>(count) ? static_cast<std::size_t>(whole) : 0;
}

std::span<const NumberFunction> seawater_functions();
std::span<const NumberFunction> purifier_functions();
std::span<const NumberFunction> mixture_functions();

inline std::array<std::span<const NumberFunction>, 3> all_functions() {
  return {seawater_functions(), purifier_functions(), mixture_functions()};
}

}  // namespace tidewright::support
