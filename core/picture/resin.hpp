// How long the lead canister of resin will last, from what the permeate has put on it.
#pragma once

#include <optional>

#include "core/base/units.hpp"
#include "core/room/room.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::picture {

struct ResinForecast {
  Litres left;                 // until the water behind it gets worse
  double used = 0;             // of what it can take until then; 1 and above: spent
  std::optional<double> days;  // at the pace since it was changed; none in its first three days
};

// None without its size, a permeate meter, a `rotated` or `replaced` that was told, and ten litres
// since. Good to a quarter: the capacities are common ones of mixed resin (core/water/resin).
std::optional<ResinForecast> resin_forecast(const room::Room&, const state::Ledger&, Instant now);

}  // namespace tidewright::picture
