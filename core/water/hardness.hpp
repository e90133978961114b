// How hard a water is, and whether it leaves scale. Hardness and alkalinity are counted as mg/L of
// calcium carbonate.
#pragma once

#include "core/base/units.hpp"
#include "core/water/answer.hpp"

namespace tidewright::water {

enum class Hardness { soft, moderately_hard, hard, very_hard };

// Range 0 to 10000 mg/L; 60, 120 and 180 belong to the softer class. Source: US Geological Survey,
// classes seen in a secondary copy.
Answer<Hardness> hardness_class(MilligramsPerLitre calcium_carbonate);

// US grains per US gallon: 17.118 mg/L each. Range 0 to 10000 mg/L.
Answer<double> grains_per_gallon(MilligramsPerLitre calcium_carbonate);

struct ScaleWater {
  Celsius temperature;
  MilligramsPerLitre dissolved_solids;
  MilligramsPerLitre calcium;  // calcium hardness
  MilligramsPerLitre alkalinity;
  double ph;
};

// The same as a membrane's concentrate: solids, calcium and alkalinity are `factor` times as much
// (see concentration_factor), and the pH is higher by log10 of it, since the carbonic acid passes
// the membrane and is as much on both sides. Range: factor 1 to 100; the outcome is judged by
// langelier. Error of the pH 0.1 for a factor up to 4: scale that falls on the way lowers it.
// Source: balance of salt; the first ionisation of carbonic acid.
Answer<ScaleWater> concentrated(const ScaleWater& water, double factor);

struct Langelier {
  double saturation_ph;  // at which it would neither leave nor take lime
  double index;          // pH - saturation pH: above 0 it leaves scale, below it takes it
};
// Range: 0 to 90 degrees, solids 1 to 10000, calcium and alkalinity 1 to 5000 mg/L, pH 4 to 11.
// Error 0.2, and that of the pH, whole. It says whether, not how much.
// Source: Langelier 1936, J. Am. Water Works Assoc. 28:1500, in the form of logarithms that is
// printed with a worked example on the page "Langelier Index Calculation" of Corrosion Doctors.
Answer<Langelier> langelier(const ScaleWater& water);

}  // namespace tidewright::water
