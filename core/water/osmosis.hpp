// Osmotic pressure of the water in front of a membrane, and what of the pump's pressure is left to
// drive water through it.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Of natural waters and of seawater. Range 0 to 60 g/L, 0 to 50 degrees. Error: within 10 % of
// TEOS-10 for seawater salts of 0.5 to 40 g/L; pure sodium chloride has 10 to 20 % more below
// 20 g/L, 4 to 8 % above. At home scale it is a tenth of a bar in three: an error of 10 % is 0.02
// bar. Source: FilmTec Reverse Osmosis Membranes Technical Manual, DuPont, form 45-D01504-en rev.
// 20, equations 75 (below 20 g/L) and 76 (above), seen in a secondary copy.
Answer<Bars> osmotic_pressure(MilligramsPerLitre dissolved_solids, Celsius temperature);

// At what a membrane is run.
struct MembraneConditions {
  Bars feed_pressure;
  Bars pressure_drop{0};  // from feed to concentrate
  Bars permeate_pressure{0};
  MilligramsPerLitre feed;
  double recovery;
  Celsius temperature;
};

// Feed pressure less half the drop, less the pressure of the permeate, less the osmotic pressure of
// the mean feed side. Range: pressures 0 to 100 bar, recovery 0 to 0.99, feed and temperature as
// osmotic_pressure; refused if less than 0.01 bar is left: no water would pass.
// Source: as above, equations 72 and 77.
Answer<Bars> net_driving_pressure(const MembraneConditions& conditions);

}  // namespace tidewright::water
