// Whether a concentrate can be given to plants: by its salt, and by what it is made of.
//
// Guidelines, not laws: made for farms where it rains little and water drains well. Pots without
// drainage bear less. What they say nothing of: see cautions.hpp.
// Source: FAO Irrigation and Drainage Paper 29 rev. 1, Ayers & Westcot 1985, table 1, seen in a
// secondary copy (which prints mg/L where the original has me/L).
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

enum class Restriction { none, slight_to_moderate, severe };

enum class IrrigationItem {
  conductivity,          // dS/m (= mS/cm), what plants can take up against
  dissolved_solids,      // mg/L, the same by weight
  sodium_surface,        // sodium adsorption ratio, watered on the soil
  sodium_sprinkler,      // meq/L, on the leaves: no severe grade
  chloride_surface,      // meq/L
  chloride_sprinkler,    // meq/L: no severe grade
  boron,                 // mg/L
  nitrate_nitrogen,      // mg/L as nitrogen
  bicarbonate_sprinkler  // meq/L, leaves white marks
};

// A value at a limit has the milder grade. Range 0 to 1e6.
Answer<Restriction> restriction(IrrigationItem item, double value);

// Whether the water enters the soil at all. Low salt with much sodium is worse than more salt: very
// pure water closes a soil, too. Range: adsorption ratio 0 to 40, conductivity 0 to 20 dS/m.
Answer<Restriction> infiltration_restriction(double sodium_adsorption_ratio,
                                             MillisiemensPerCm conductivity);

// "normal range" of the source: 6.5 to 8.4. Range of pH 0 to 14.
Answer<bool> irrigation_ph_is_normal(double ph);

}  // namespace tidewright::water
