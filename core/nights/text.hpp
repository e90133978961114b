// A night as text, one readable line each, and back: what is printed before it is lived through,
// and what tests/simulation/nights keeps.
//
//   household minimal.toml
//   seed 17
//   lasts 06:30:00.000                        (and calm_from, fills_by: see night.hpp)
//   vat_filled 0.31                           (each habit)
//   at 01:10:00.000 for 00:40:00.000 sensor_silent floor
//   at 02:00:00.000 spill 2.5 l
//
// A line that begins with # is not read.
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "core/nights/night.hpp"

namespace tidewright::nights {

std::string print(const Night&, const room::Room&);

// The name in the line "household", or "".
std::string household_of(std::string_view text);
// The night, or what is wrong: "line 4: ...".
std::variant<Night, std::string> parse(std::string_view text, const room::Room&);

}  // namespace tidewright::nights
