// Mixed-bed resin: what it must hold, what it can hold, and how many litres that makes.
//
// Capacity is counted in equivalents, because water changes and litres do not say what was in them.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

struct ResinLoad {
  MilliequivalentsPerLitre cation;
  MilliequivalentsPerLitre anion;  // with carbon dioxide and silica, which no ppm meter sees
};
// Of a permeate, read between membrane and resin. Range: conductivity 0 to 2000 uS/cm at 25
// degrees, carbon dioxide 0 to 500 mg/L, silica 0 to 200 mg/L. Error 15 %, and on the safe side:
// the ions that carbon dioxide makes are counted twice (0.06 of 0.57 meq/L at most). Chloramine
// adds ammonium to the cations: 3 mg/L as chlorine is 0.04 meq/L.
// Source: Standard Methods 1030 for conductivity / 100; carbon dioxide and silica as one charge.
Answer<ResinLoad> resin_load(MicrosiemensPerCm permeate_at_25, MilligramsPerLitre carbon_dioxide,
                             MilligramsPerLitre silica);

struct ResinBed {
  Litres resin;
  double cation_eq_per_litre;  // of the mixed bed, not of the cation resin in it
  double anion_eq_per_litre;   // common practice: 0.5 to 0.65 in total
  double utilisation;          // what of that is had before the product rises: common practice 0.8
};

enum class ResinSide { cation, anion };

struct ResinRun {
  Litres by_cation;
  Litres by_anion;
  Litres litres;  // the smaller of both
  ResinSide limited_by;
};
// Litres that a fresh bed treats. Range: resin 0.01 to 10000 L, capacities 0.01 to 3 eq/L,
// utilisation 0.01 to 1, loads 1e-5 to 1000 meq/L. Error: that of capacity and load, 25 % before
// the first canister has been learned from.
Answer<ResinRun> resin_run(const ResinBed& bed, const ResinLoad& load);

// Litres left of a bed that has held `used_eq` equivalents of the side that limits it, at a load
// of `load`; 0 if it is spent. Range: `fresh_eq` and `used_eq` 0 to 1e5 eq, load 1e-5 to 1000.
Answer<Litres> litres_left(double fresh_eq, double used_eq, MilliequivalentsPerLitre load);

// Capacity in the trade's other unit, thousands of grains of calcium carbonate per cubic foot.
// 1 eq/L is 21.87. Range 0 to 100.
Answer<double> equivalents_per_litre(double kilograins_per_cubic_foot);

}  // namespace tidewright::water
