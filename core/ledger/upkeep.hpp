// What ages or runs out, and what people tell of it: the vat's water, its cleaning, the resin, the
// stock.
#pragma once

#include "core/event.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// `fresh` litres came into the vat since the last posting; its level is ledger.level's. The water
// mixes: fresh litres make all of it younger, and what is drawn takes water of the mean age along.
// Time goes on while the daemon is away. A rotated or replaced canister ends what was known of the
// water behind it.
void post_upkeep(const Sources&, const Event&, Litres fresh, state::Ledger&);

}  // namespace tidewright::ledger
