// The median of dissolved solids that an alarm may be raised on.
#pragma once

#include <optional>

#include "core/base/units.hpp"
#include "core/room/room.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::picture {

// Dissolved solids judged on settled running; `ppm` is a median.
struct Judged {
  PartsPerMillion ppm;
  Litres litres;  // made over the samples
  // The lowest of all samples that are kept, once there are as many as can be.
  std::optional<PartsPerMillion> lowest = std::nullopt;
};

// Over the fewest samples, three at least, that span the purifier's judged time and litres; none
// until there are so many. The room has a purifier. Where no pump is switched by us the litres
// are not known and only the time counts.
std::optional<Judged> judge_samples(const room::Room&, const state::Samples&);

}  // namespace tidewright::picture
