// The charge that the permeate puts on the lead canister.
#pragma once

#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// Books `made` litres, which came since the last posting, with what the permeate meter shows now;
// where it shows nothing, with the mean so far. Nothing is booked until `rotated` or `replaced` has
// been told once: how full the resin was before, nobody knows.
void post_resin(const Sources&, Litres made, state::Ledger&);

}  // namespace tidewright::ledger
