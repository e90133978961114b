// Very pure water: behind the resin it is the water itself that carries most of the current, and
// its conductivity grows by 5 % per degree. Linear compensation is wrong by half there.
//
// Range of temperature everywhere: 0 to 50 degrees; to 100 extrapolated and marked.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// pKw: minus the logarithm of water's ion product, (mol/kg)2, at 1 atm. Error 0.001 against their
// own table, 0.017 against later formulas.
// Source: Marshall & Franck 1981, J. Phys. Chem. Ref. Data 10:295, its equation 4 (coefficients
// from memory), with the density of Kell 1975, J. Chem. Eng. Data 20:97 (from memory).
Answer<double> water_ionisation(Celsius temperature);

// Of water without anything in it: 0.0550 at 25 degrees, 18.2 megohm cm. Error 2 %.
// Source: 1000 d sqrt(Kw) (hydrogen + hydroxide), as in Light, Licht, Bevilacqua & Morash 2005,
// Electrochem. Solid-State Lett. 8:E16.
Answer<MicrosiemensPerCm> pure_water_conductivity(Celsius temperature);

// Of water with a trace of sodium chloride. Range 0 to 20 mg/L: above, the ions slow each other by
// more than 1.5 %. Error 2 %. Source: as above; limiting conductances.
Answer<MicrosiemensPerCm> trace_salt_conductivity(MilligramsPerLitre sodium_chloride,
                                                  Celsius temperature);

// Conductivity at 25 degrees of water that reads `raw` without compensation: the water's own part
// is taken away, the salt's part is carried to 25 degrees, and the water's part at 25 put back.
// Made for readings up to 5 uS/cm; up to 100 the salt part rules and it differs from the linear law
// by less than 3 %. Range 0 to 100; a reading below pure water's own is answered and marked: it is
// the instrument's error, or its thermometer's. Error 3 % of the reading, 0.003 uS/cm at least.
// Source: the method of ASTM D1125 and D5391 (not seen) as described by Morash, Thornton, Saunders,
// Bevilacqua & Light, Ultrapure Water, December 1994.
Answer<MicrosiemensPerCm> compensated_pure_water(MicrosiemensPerCm raw, Celsius temperature);

}  // namespace tidewright::water
