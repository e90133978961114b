// How deep the water stands, from what a gauge measures.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// A gauge that looks down from above. Range: gauge 0 to 100 m above the bottom, distance 0 to that
// height. Exact; an ultrasonic one that does not know the temperature of its air errs by 0.17 % of
// the distance for each degree (speed of sound: textbook).
Answer<Metres> depth_from_distance(Metres distance, Metres gauge_above_bottom);
Answer<Metres> distance_from_depth(Metres depth, Metres gauge_above_bottom);

// A gauge that feels the weight of the water above it: pressure over that of the air. Range:
// 0 to 10 bar, density 900 to 1300 kg/m3, gauge 0 to 100 m above the bottom. Exact; with pure
// water's density in seawater it would be 2.6 % too deep.
// Source: hydrostatics, standard gravity 9.80665 m/s2 (3rd General Conference on Weights and
// Measures, 1901); the earth's own differs by 0.3 % at most.
Answer<Metres> depth_from_pressure(Bars pressure, KilogramsPerCubicMetre density,
                                   Metres gauge_above_bottom = {0});
// Its inverse. Refused if the water does not reach the gauge.
Answer<Bars> pressure_from_depth(Metres depth, KilogramsPerCubicMetre density,
                                 Metres gauge_above_bottom = {0});

}  // namespace tidewright::water
