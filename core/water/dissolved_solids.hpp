// Dissolved solids and equivalents from conductivity. A "ppm meter" measures conductivity and
// multiplies; two meters with different factors show different ppm of the same water. So store the
// conductivity at 25 degrees, and say the factor with each ppm.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

enum class SolidsScale {
  sodium_chloride,  // 0.5 mg/L per uS/cm: most hand meters
  irrigation,       // 0.64: 640 mg/L per dS/m, FAO Irrigation and Drainage Paper 29
  natural_water,    // 0.7: mixed waters, "442"
};

// mg/L per uS/cm.
double solids_factor(SolidsScale scale);

// Range 0 to 100000 uS/cm at 25 degrees. Error: a unit of the display on the scale's own salt; as
// true mg/L of a natural water 0.55 to 0.75 per uS/cm, so 20 % (Hem 1985, USGS Water-Supply Paper
// 2254).
Answer<MilligramsPerLitre> dissolved_solids(MicrosiemensPerCm at_25, SolidsScale scale);
// The inverse. Range 0 to 100000 mg/L.
Answer<MicrosiemensPerCm> conductivity_of_solids(MilligramsPerLitre solids, SolidsScale scale);

// uS/cm at 25 degrees per meq/L.
enum class IonMix {
  natural_water,       // 100: Standard Methods 1030, a rule; error 15 %
  sodium_chloride,     // 126.45, very dilute
  sodium_bicarbonate,  // 94.6, very dilute
};

// Equivalents of the cations, or of the anions, per litre. Range 0 to 2000 uS/cm: above, ions slow
// each other by more than a tenth.
Answer<MilliequivalentsPerLitre> equivalents(MicrosiemensPerCm at_25, IonMix mix);

}  // namespace tidewright::water
