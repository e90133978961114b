// What several quantities say alike of fresh and pure water: a ppm meter's factor as a person types
// it, and which reagent water a conductivity would allow.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <variant>

#include "core/water/dissolved_solids.hpp"
#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

inline constexpr std::array solids_scales{water::SolidsScale::sodium_chloride,
                                          water::SolidsScale::irrigation,
                                          water::SolidsScale::natural_water};

inline constexpr Option solids_factor{
    "factor", Unit::text,
    "of the ppm meter: 0.5, 0.64 or 0.7; or sodium-chloride, irrigation, natural-water"};

// "sodium_chloride", as part of a result's key.
std::string key(water::SolidsScale scale);

// "0.5 (sodium-chloride)"
std::string words(water::SolidsScale scale);

// By its factor or its name; refused if none is typed: without it a ppm means nothing.
std::variant<water::SolidsScale, Refusal> typed_factor(const Inputs& inputs);

// The types of reagent water, ASTM D1193, that may have this conductivity at 25 °C: "type II, IV";
// or none.
std::string reagent_water(MicrosiemensPerCm at_25);

inline constexpr const char* no_reagent_water = "none";
inline constexpr std::string_view reagent_water_hint =
    "The type is by conductivity alone: the standard also limits silica, sodium, chloride and "
    "organic carbon.";

}  // namespace tidewright::commands::reckon
