// The law by which a conductivity meter turns what it measured into that at 25 °C, as a person
// types it: --law, and --percent-per-celsius for the linear one. See
// core/water/conductivity_compensation.hpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/water/conductivity_compensation.hpp"
#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

inline constexpr Option percent_per_celsius{
    "percent-per-celsius", Unit::none, "of the linear law, in % per °C; 2 if left out", 0, 3.5};

// The law of such a name, "linear", "iso-7888" or "none", with the coefficient that was typed for
// the linear one; none if it is no such name.
std::optional<water::Compensation> law_named(std::string_view name, const Inputs& inputs);

// A coefficient was typed for what has none.
std::optional<Refusal> coefficient_without_linear(const water::Compensation& law,
                                                  const Inputs& inputs);

// "linear, 2 % per °C"
std::string words(const water::Compensation& law);

}  // namespace tidewright::commands::reckon
