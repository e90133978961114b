// The metered transfer: litres to go before it starts, and what came of it since.
#pragma once

#include "core/ledger/level.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// `flowed` is what the running time `worked` since the last posting should have given. A fill that
// has reached STOP teaches how much of that comes.
void post_fill(const Sources&, const LevelMove&, Litres flowed, Duration worked, state::Fill&,
               state::LearnedFlow&);

}  // namespace tidewright::ledger
