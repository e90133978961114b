// How the water behind a bed of resin gets worse as the bed fills: an S-shaped curve. The same
// curve goes by three names: Thomas (half = q0 m / C0, spread = Q / (kTh C0)), Bohart & Adams
// (spread = Q / (kBA C0)) and Yoon & Nelson (half = tau Q, spread = Q / kYN).
//
// It holds while the feed stays the same; where it changes, read "litres" as litres of mean water.
// Weak ions (carbonic acid, silica) leave a bed first, and conductivity shows them late.
// Source: Thomas 1944, J. Am. Chem. Soc. 66:1664; Bohart & Adams 1920, J. Am. Chem. Soc. 42:523, in
// its logistic form; Yoon & Nelson 1984, Am. Ind. Hyg. Assoc. J. 45:509. From memory.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Range everywhere: half 0.001 to 1e9 L, spread half / 500 to half.
struct Breakthrough {
  Litres half;    // at which the water behind has half of what goes in
  Litres spread;  // how gradual: from 27 % to 73 % is two of these
};

// What leaves / what goes in, after `passed`. Range: 0 to 1e9 L. Exact for the model.
Answer<double> breakthrough_at(const Breakthrough& curve, Litres passed);

// Litres after which that fraction leaves; 0 if it did so from the start. Range 1e-6 to 1 - 1e-6.
Answer<Litres> litres_to(const Breakthrough& curve, double fraction);

// What the bed has held after `passed`, as litres of the water that went in; of `half`, it is the
// utilisation. Range: 0 to 1e9 L.
Answer<Litres> litres_held(const Breakthrough& curve, Litres passed);

struct BreakthroughReading {
  Litres passed;
  double fraction;  // reading behind the bed / before it
};
// The curve through two readings. Range: fractions 1e-6 to 1 - 1e-6, the later the higher; refused
// if the curve falls out of its own range. Error: fractions of 1 % and 5 %, each good to a fifth of
// itself, leave 5 % of `half`; two that lie close leave it open.
Answer<Breakthrough> breakthrough_through(const BreakthroughReading& earlier,
                                          const BreakthroughReading& later);

}  // namespace tidewright::water
