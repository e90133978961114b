// The scales of specific gravity. A specific gravity is a ratio of two densities: that of the
// sample at one temperature to that of pure water at another, and the number means nothing without
// the two: 1.025 is a practical salinity of 32.5 on one of these scales and of 37.2 on another.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "core/base/units.hpp"

namespace tidewright::water {

enum class GravityScale : std::uint8_t {
  celsius_25_25,
  celsius_20_20,
  fahrenheit_60_60,
  celsius_17_5_17_5,
  celsius_15_15,
  celsius_15_4,
  celsius_20_4,
  celsius_25_4,
};

struct GravityTemperatures {
  Celsius sample;
  Celsius pure_water;
};

GravityTemperatures temperatures(GravityScale scale);

// "25/25": temperature of the sample before that of the water.
std::string_view text(GravityScale scale);

// The eight, as a household is told them that wrote a specific gravity without one.
inline constexpr std::string_view gravity_scales =
    "25/25, 20/20, 60F/60F, 17.5/17.5, 15/15, 15/4, 20/4, 25/4";

// The scale of such a text; spaces and signs of degrees are passed over, "77F/77F" is 25/25 and
// "68F/68F" is 20/20. None if it is none of the eight.
std::optional<GravityScale> gravity_scale(std::string_view text);

}  // namespace tidewright::water
