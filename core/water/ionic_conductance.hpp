// How much current an ion carries in very dilute water: limiting equivalent conductances, in
// S cm2 per equivalent. Conductivity in uS/cm is their sum, each times its milliequivalents/L.
//
// Range 0 to 50 degrees; to 100 extrapolated and marked; refused beyond. Error, against what
// PHREEQC version 3 makes of its database: hydrogen 1.0 %, sodium chloride 1.6 %, hydroxide 1 %
// above 15 degrees and 4 % at 0; bicarbonate 6 % from 10 to 35 degrees and 12 % at 50. All of them
// 3 % more at 100. At 25 degrees 0.7 %. Source: Robinson & Stokes, Electrolyte Solutions, 1965
// (from memory), through whose values cubics in the temperature were laid here (largest difference
// 0.005). Hydrogen is checked against Lange's Handbook of Chemistry, 15th edition, table 8.32, to
// 0.2 %.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

Answer<double> hydrogen_conductance(Celsius temperature);
Answer<double> hydroxide_conductance(Celsius temperature);
Answer<double> sodium_chloride_conductance(Celsius temperature);  // sodium and chloride together

// From 44.5 at 25 degrees, by 2.1 % of it per degree: common practice.
Answer<double> bicarbonate_conductance(Celsius temperature);

}  // namespace tidewright::water
