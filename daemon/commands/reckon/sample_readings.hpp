// What each kind of instrument shows in a sample of seawater, as lines of a sheet.
#pragma once

#include <optional>

#include "core/base/units.hpp"
#include "core/water/conductivity_compensation.hpp"
#include "core/water/gravity_scale.hpp"
#include "daemon/commands/reckon/quantity.hpp"
#include "daemon/commands/reckon/sheet.hpp"

namespace tidewright::commands::reckon {

struct Sample {
  PracticalSalinity salinity;
  Celsius temperature;
};

// Raw; by two laws to 25 °C; and what the water has there. A law that has no factor at the
// temperature is left out: the answer is why.
std::optional<water::Outside> add_conductivity(const Sample& sample,
                                               const water::Compensation& linear, Sheet& sheet);

// Specific gravity on each scale.
void add_gravities(const Sample& sample, Sheet& sheet);

void add_hydrometer(const Sample& sample, water::GravityScale scale, Sheet& sheet);

// The refractive index, and what a scale graduated for brine shows.
void add_optics(const Sample& sample, Sheet& sheet);

void add_density(const Sample& sample, Sheet& sheet);

// Sodium chloride in water that sets a refractometer's seawater scale to the sample's salinity.
void add_calibration_fluid(const Sample& sample, Sheet& sheet);

}  // namespace tidewright::commands::reckon
