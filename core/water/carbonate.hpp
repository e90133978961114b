// Carbon dioxide and its acid. A membrane lets the gas pass and a ppm meter does not see it, but
// the resin behind must hold all of it: well water with much of it empties a canister early.
//
// Alkalinity is counted as mg/L of calcium carbonate, as test kits do; 50.04 of it are 1 meq/L.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Minus the logarithms of the equilibrium constants, at infinite dilution.
struct CarbonateConstants {
  double first_acid;   // pK1: CO2 to bicarbonate, mol/kg
  double second_acid;  // pK2: bicarbonate to carbonate, mol/kg
  double solubility;   // pKH: CO2 of the air, mol/(kg atm)
};
// Range 0 to 90 degrees. Error 0.002 against Millero et al. 2006, Marine Chemistry 100:80.
// Source: Plummer & Busenberg 1982, Geochim. Cosmochim. Acta 46:1011, seen in secondary copies;
// several copies have typing errors in the second and third, these agree with three of them.
Answer<CarbonateConstants> carbonate_constants(Celsius temperature);

// How much weaker a single-charged ion acts than its concentration says: Davies 1962 with 0.509,
// its constant at 25 degrees (0.3 % at 5). Range: ionic strength 0 to 0.1 mol/L.
Answer<double> ion_activity(double ionic_strength_mol_l);

// Range 0 to 1000 mg/L as calcium carbonate.
Answer<MilliequivalentsPerLitre> equivalents_of_alkalinity(MilligramsPerLitre alkalinity);

// Free carbon dioxide of a water, mg/L. `ionic_strength_mol_l` 0: taken as infinitely dilute, which
// is 6 to 10 % too high for tap water of 0.003 to 0.01 mol/L (2.5e-5 per ppm is a fair guess).
// Range: alkalinity 0 to 1000 mg/L, pH 5 to 8.3, 0 to 50 degrees. Above pH 8.3 there is next to
// none; carbonate is neglected, +1 % at 8.0. Error: 0.1 of pH is 26 %, and pH must be measured at
// the tap: a sample in a glass loses its gas.
// Source: alkalinity x 10^(pK1 - pH), Stumm & Morgan.
Answer<MilligramsPerLitre> carbon_dioxide(MilligramsPerLitre alkalinity, double ph,
                                          Celsius temperature, double ionic_strength_mol_l = 0);

// pH of the permeate: the gas passes, of bicarbonate the fraction `rejection` is held back. Below
// 6 it is itself a sign of carbon dioxide in the feed. Range: as carbon_dioxide, rejection 0 to
// 0.999. Error 0.1; lower alkalinities of the permeate than 0.01 meq/L read higher than this.
Answer<double> permeate_ph(double feed_ph, double bicarbonate_rejection);

// Pure water that has stood open to air.
struct AirEquilibrium {
  MilligramsPerLitre carbon_dioxide;
  double ph;
  MicrosiemensPerCm conductivity;  // at its own temperature
};
// Range: 0 to 50 degrees, 0 to 100000 ppm of the gas by volume in the air, at 1 atm. Error 3 %, pH
// 0.01. Outdoors 420 ppm, in rooms often 1000: so stored pure water reads 0 to 1 ppm behind the
// best resin.
Answer<AirEquilibrium> air_equilibrium(Celsius temperature, double gas_ppm);

}  // namespace tidewright::water
