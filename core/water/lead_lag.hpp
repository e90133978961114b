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

// Until resin that can still take up `left` of one canister's capacity lets `fraction` of the
// permeate through; two canisters in a row count as one bed of both. 0 if it is reached at once.
// Range of left 0 to 2, of fraction 0.001 to 0.99.
Answer<double> run_of(double sharpness, double left, double fraction);

// Until the product reaches `fraction` of the permeate, by one fresh canister alone, and by two
// that are changed together (per canister). Range of fraction as above.
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

// What each canister can still take up, in parts of its capacity: 1 is fresh.
struct CanistersLeft {
  double lead;
  double lag;
};
// From what is read behind each / the permeate: 1 / B of the one bed, and of both. Range: behind
// the lead 1e-9 to 1, behind the lag 1e-12 to that. Error: a reading twice too high takes
// ln 2 / sharpness from the answer, 0.07 at a sharpness of 10.
Answer<CanistersLeft> canisters_left(double sharpness, double behind_lead, double behind_lag);

// What a lag that was fresh at the last turn can still take up at least, while the lead lets
// `behind_lead` through, whatever the litres: all that the lead has let through is spread x
// ln(1 / (1 - behind_lead)). Range 1e-9 to 1. Error: below the rotation's own by 0.003 at most from
// a sharpness of 5.
Answer<double> fresh_lag_left(double sharpness, double behind_lead);

}  // namespace tidewright::water
