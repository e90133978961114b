#include "core/rehearsal/resin.hpp"

#include <cmath>

namespace tidewright::rehearsal {

PartsPerMillion Canister::outlet(PartsPerMillion inlet) const {
  const double steepness = 40;  // from 2 % to 98 % within a fifth of the capacity (no source)
  return inlet * (1 / (1 + std::exp(-steepness * (used() - 1))));
}

void Canister::take(Litres water, PartsPerMillion inlet) {
  // 1 ppm in 1 litre is 1 mg of salt.
  taken_mg_ += water.value * (inlet - outlet(inlet)).value;
}

}  // namespace tidewright::rehearsal
