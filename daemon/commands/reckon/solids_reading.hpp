// The conductivity at 25 °C that the reading of fresh water stands for, which a person typed: raw,
// compensated, or as ppm.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "core/water/dissolved_solids.hpp"
#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

// Below this, pure water's own ions count: it is carried to 25 °C by its own law, if none is typed.
inline constexpr MicrosiemensPerCm pure_below{1};
inline constexpr const char* pure_water_law = "pure water's own";

struct At25 {
  MicrosiemensPerCm conductivity;
  std::string law;  // by which it was carried to 25 °C
  std::optional<water::Outside> remark{};
};

// Refused if there is not one reading, if a raw one has no temperature, or another one has a law.
std::variant<At25, Refusal> conductivity_at_25(const Inputs& inputs, water::SolidsScale scale,
                                               const char* example);

}  // namespace tidewright::commands::reckon
