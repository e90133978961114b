// What evaporation does: the water goes and the salt stays. What is topped up must therefore be
// pure water; 4 L of seawater instead, in 400 L, is 0.34 more of salinity, each time.
//
// Source: balance of mass; densities of TEOS-10; at one temperature. Salt that creeps or sprays out
// is not in it. Error 1e-4 in salinity, but for the readings.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"
#include "core/water/body.hpp"

namespace tidewright::water {

// `evaporated` is counted as litres of pure water of the body's temperature, as a top-off meter
// counts it. Range: 0 to 0.9 of the volume; refused where the salinity comes above 115.
Answer<Body> after_evaporation(const Body& body, Litres evaporated);

// The same, its volume kept by topping up with water of this salinity. Range: in all up to 1000
// times the volume, top-up 0 to 70.
Answer<Body> after_top_up(const Body& body, Litres evaporated, PracticalSalinity top_up);

// The inverse: what has evaporated, from the salinity it has come to. Range: a salinity above 0.01,
// and one that has risen to at most 9 times.
Answer<Litres> evaporated_until(const Body& body, PracticalSalinity salinity);

}  // namespace tidewright::water
