// The water balance as it goes on: which stretch this is, and who looks at it.
#pragma once

#include <optional>

#include "core/event.hpp"
#include "core/ledger/level.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// Needs a gauge and a switched pump; without them nothing is known of standing and running, and
// nothing is found. `fills`: what the pump makes goes into the vat now. What the daemon's own
// transfer takes is no draw.
void post_balance(const Sources&, const Event&, Duration elapsed, std::optional<Litres> reading,
                  const LevelMove&, bool fills, state::Ledger&);

}  // namespace tidewright::ledger
