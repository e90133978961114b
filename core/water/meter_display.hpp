// What a meter's display can hide. "0 ppm" is a range, and it says nothing of silica, carbon
// dioxide, ammonia, boron or anything else that carries little or no current.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"
#include "core/water/dissolved_solids.hpp"

namespace tidewright::water {

struct MeterDisplay {
  double step_mg_l = 1;
  bool rounds = true;  // to the nearest step; else cuts off what is below the next
  SolidsScale scale = SolidsScale::sodium_chloride;
};

// The number that stands on the display. Range: 0 to 100000 uS/cm, step 0.001 to 100 mg/L.
Answer<MilligramsPerLitre> shown(MicrosiemensPerCm at_25, const MeterDisplay& display);

struct BehindZero {
  MicrosiemensPerCm conductivity;      // the display shows 0 below this
  MilligramsPerLitre sodium_chloride;  // and this much salt, if it is only salt
  double megohm_cm;                    // the water may have as little resistivity as this
};

// What may stand behind a shown 0 at 25 degrees. Range: step 0.1 to 10 mg/L, so that more is
// allowed than pure water itself conducts. Error 2 %.
Answer<BehindZero> behind_zero(const MeterDisplay& display);

}  // namespace tidewright::water
