// Specific gravity and the glass hydrometer, by the density of TEOS-10: see seawater.hpp for what
// it is made for.
//
// A glass hydrometer sinks by the density of the water as it is, and its glass grows a little with
// warmth: at temperature t it reads R = density (1 + g (t - T)) / density of pure water at Tref,
// with T and Tref those of its scale and g = 25e-6 per degree.
// Source of g: ISO 1768:1975 section 3, conventional value for glass hydrometers. Neither the
// meniscus nor the buoyancy of air (3e-5) is allowed for. A swing-arm of plastic follows no such
// law: it is to be checked and used at one temperature.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"
#include "core/water/gravity_scale.hpp"

namespace tidewright::water {

// What the salinity is called on a scale: the sample has the scale's own temperature.
Answer<double> specific_gravity(PracticalSalinity salinity, GravityScale scale);

// Its inverse, to 1e-9.
Answer<PracticalSalinity> salinity_of_gravity(double specific_gravity, GravityScale scale);

// What a glass hydrometer of this scale reads in water of this salinity and temperature.
Answer<double> hydrometer_reading(PracticalSalinity salinity, Celsius temperature,
                                  GravityScale scale);

// Its inverse, to 1e-9: the salinity from a reading at the temperature of the sample.
Answer<PracticalSalinity> salinity_of_hydrometer(double reading, Celsius temperature,
                                                 GravityScale scale);

}  // namespace tidewright::water
