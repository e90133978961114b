// Two equal canisters in series, lead and lag. When the lead is spent the old lag becomes lead and
// a fresh canister becomes lag: never a used one behind a fresh one.
//
// The model is one ion that the resin takes up at a rate of k c (q0 - q), without going back:
// Bohart & Adams 1920, J. Am. Chem. Soc. 42:523, and its solution for a bed that is partly loaded,
// as Amundson 1948, J. Phys. Colloid Chem. 52:1153 has it (both from memory; the solution was
// derived anew and is checked by integrating the rate numerically). In it a bed of any loading is
// one number, and what leaves a canister after the charge A is A / (A + B - 1), where
//   A = exp(sharpness x litres passed / half),  B = exp(sharpness x fraction of capacity left).
//
// Carbonic acid and silica pass sooner than the model's ion, and a rise in conductivity behind the
// lead shows them late: use litres left beside it.
//
// Sharpness is half / spread of breakthrough.hpp, of one canister. Range 3 to 300. Litres are in
// parts of one canister's half. Error 1 % against numerical integration; that of the model for a
// mixed bed is not known: learn from each canister.
#pragma once

#include "core/water/answer.hpp"

namespace tidewright::water {

// Until the product reaches `fraction` of the permeate, by one canister alone, and by two that are
// changed together (per canister). Range of fraction 0.001 to 0.99; 0 if it is reached at once.
Answer<double> run_of_one(double sharpness, double fraction);
Answer<double> run_of_two_together(double sharpness, double fraction);

enum class RotateWhen {
  lead_reaches,  // the reading between the canisters / the permeate
  lag_reaches,   // the product / the permeate: the most litres, and no reserve at all
};

// One turn, when many have gone before.
struct Rotation {
  double litres_over_half;  // per canister
  double utilisation;       // of the canister that is taken out
  double behind_lead;       // at the turn, as fractions of the permeate
  double behind_lag;
};
// Refused also if the fraction is reached at once.
Answer<Rotation> rotation(double sharpness, RotateWhen when, double fraction);

}  // namespace tidewright::water
