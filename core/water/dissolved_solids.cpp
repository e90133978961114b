#include "core/water/dissolved_solids.hpp"

namespace tidewright::water {
namespace {

constexpr Range conductivities{"conductivity", "µS/cm", 0, 100000};
constexpr Range dilute_conductivities{"conductivity", "µS/cm", 0, 2000};
constexpr Range solids_range{"dissolved solids", "mg/L", 0, 100000};

double conductance(IonMix mix) {
  switch (mix) {
    case IonMix::sodium_chloride:
      return 126.45;
    case IonMix::sodium_bicarbonate:
      return 94.6;
    case IonMix::natural_water:
      break;
  }
  return 100;
}

}  // namespace

double solids_factor(SolidsScale scale) {
  switch (scale) {
    case SolidsScale::sodium_chloride:
      return 0.5;
    case SolidsScale::irrigation:
      return 0.64;
    case SolidsScale::natural_water:
      break;
  }
  return 0.7;
}

Answer<MilligramsPerLitre> dissolved_solids(MicrosiemensPerCm at_25, SolidsScale scale) {
  if (const auto bad = outside(conductivities, at_25.value)) return *bad;
  return MilligramsPerLitre{at_25.value * solids_factor(scale)};
}

Answer<MicrosiemensPerCm> conductivity_of_solids(MilligramsPerLitre solids, SolidsScale scale) {
  if (const auto bad = outside(solids_range, solids.value)) return *bad;
  return MicrosiemensPerCm{solids.value / solids_factor(scale)};
}

Answer<MilliequivalentsPerLitre> equivalents(MicrosiemensPerCm at_25, IonMix mix) {
  if (const auto bad = outside(dilute_conductivities, at_25.value)) return *bad;
  return MilliequivalentsPerLitre{at_25.value / conductance(mix)};
}

}  // namespace tidewright::water
