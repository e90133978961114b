// Reverse-osmosis membrane: how its flow depends on temperature. Cold water is thicker, and a
// membrane at 10 degrees gives little more than half of what it gives at 25.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// exp(kelvin (1 / reference - 1 / absolute temperature)): the coefficient above and below 25
// degrees, and what is counted as 0 degrees; the source's charts are made with 273.
struct MembraneTemperatureLaw {
  double kelvin_above_25 = 2640;
  double kelvin_below_25 = 3020;
  double zero_celsius_in_kelvin = 273;
};

// Product flow at `temperature` as a fraction of the flow at 25 degrees, at equal pressure.
// Dimensionless; 1 at 25, 0.584 at 10. Charts print its inverse, to divide by: 1.711 at 10.
// Range 1 to 45 degrees; outside, the nearest end's value, marked. Refused: no number, or a law
// whose coefficients are not in 0 to 10000 kelvin or its zero not in 273 to 273.15.
// Error: 0.0005 against the published chart; other membranes differ by up to 10 % at 10 degrees
// (2700 kelvin at all temperatures is in use), therefore the law is a setting.
// Source: FilmTec Reverse Osmosis Membranes Technical Manual, DuPont, form 45-D01504-en rev. 20,
// equations 73 and 74, seen in a secondary copy.
Answer<double> temperature_factor(Celsius temperature, const MembraneTemperatureLaw& law = {});

}  // namespace tidewright::water
