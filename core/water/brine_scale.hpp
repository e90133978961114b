// Refractometers that are graduated for brine: grams of sodium chloride in a kilogram of solution.
// In seawater they read too high, by 3.6 %: 36.4 at a practical salinity of 35. It is an error of
// slope, so that setting the zero with pure water does not remove it.
//
// Source of the index of brine: CRC Handbook of Chemistry and Physics, 102nd edition 2021,
// concentrative properties of aqueous solutions (data of Wolf 1966; seen in a transcription), a
// parabola through its values at 20 degrees from pure water's index (1.332988). The table has 4
// digits: the scale is known to 0.3 g/kg. Of water and seawater: refraction.hpp.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

// Index of a solution of sodium chloride at 20 degrees, 589 nm. Made for 0 to 60 g/kg, refused
// beyond. Within 5e-5 of the table.
Answer<double> brine_index(GramsPerKilogram sodium_chloride);

// What a brine scale shows in seawater of this salinity, and how much sodium chloride there is in a
// kilogram of a fluid that sets a seawater scale to it: 36.4 g at 35. The fluid is for
// refractometers only: its conductivity and its density are those of another salinity.
Answer<GramsPerKilogram> brine_scale_reading(PracticalSalinity salinity);

// Its inverse: the salinity of seawater in which a brine scale, zeroed on pure water, shows this.
Answer<PracticalSalinity> salinity_of_brine_scale(GramsPerKilogram reading);

}  // namespace tidewright::water
