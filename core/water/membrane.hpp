// Reverse-osmosis membrane: how its flow depends on temperature.
#pragma once

#include "core/base/units.hpp"

namespace tidewright::water {

// Product flow at `temperature` as a fraction of the flow at 25 degrees, at equal pressure.
// Dimensionless; 1 at 25, 0.584 at 10. Meant for 1 to 45 degrees: outside, the nearest end's value.
// Source: FilmTec Reverse Osmosis Membranes Technical Manual, DuPont, form 45-D01504-en,
// equations 73 and 74. Other membranes differ by several percent.
double temperature_factor(Celsius temperature);

}  // namespace tidewright::water
