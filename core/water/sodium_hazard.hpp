// What sodium does to soil that is watered: it closes the soil. Concentrations in meq/L (me/L).
//
// Source: FAO Irrigation and Drainage Paper 29 rev. 1, Ayers & Westcot 1985, seen in a secondary
// copy. Concentrating a water by a factor multiplies its adsorption ratio by the factor's root; the
// concentrate of softened water (all sodium) is not for plants.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

struct IrrigationIons {
  MilliequivalentsPerLitre sodium;
  MilliequivalentsPerLitre calcium;
  MilliequivalentsPerLitre magnesium;
  MilliequivalentsPerLitre bicarbonate;  // with carbonate
};

// Sodium adsorption ratio, SAR: sodium / sqrt((calcium + magnesium) / 2). Range: each 0 to 500
// meq/L, calcium and magnesium together 0.01 or more. Exact.
Answer<double> sodium_adsorption_ratio(const IrrigationIons& ions);

// Calcium that stays in the soil's water, me/L: table 11 of the source (Suarez 1981), between its
// points by straight lines. Range: bicarbonate / calcium 0.25 to 5, conductivity 0.1 to 8 dS/m
// (= mS/cm); outside, the nearest end's value, marked. Refused: ratio beyond 0 to 1e6, conductivity
// beyond 0 to 20.
Answer<MilliequivalentsPerLitre> calcium_in_soil_water(double bicarbonate_over_calcium,
                                                       MillisiemensPerCm conductivity);

// Adjusted sodium adsorption ratio, adj RNa: with calcium as it will be in the soil's water. Range
// as above; calcium 0.001 meq/L or more. Error: 0.03 by the straight lines.
Answer<double> adjusted_sodium_adsorption_ratio(const IrrigationIons& ions,
                                                MillisiemensPerCm conductivity);

// Residual sodium carbonate, meq/L: bicarbonate - calcium - magnesium; negative is good. Exact.
Answer<MilliequivalentsPerLitre> residual_sodium_carbonate(const IrrigationIons& ions);

// The fraction of the water that must drain off below the roots, so that salt does not gather:
// ECw / (5 ECe - ECw). Range: water 0 to 20 dS/m, soil that the plant bears (saturation extract)
// 0.1 to 40 dS/m; refused if it would take all of the water or more.
Answer<double> leaching_requirement(MillisiemensPerCm water, MillisiemensPerCm soil_borne);

}  // namespace tidewright::water
