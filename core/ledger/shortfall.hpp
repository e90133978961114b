// A running purifier from which nothing comes any more, or too little.
#pragma once

#include "core/ledger/slope.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// Called when a slice of running has become full. A stall is a stop that tells the levels better
// than the flow as it was, and better than two draws from a flow that goes on; one from a run's
// beginning on is the matter of level_flat_while_filling. Slow is less than 0.6 of what three fills
// have taught of this purifier at this temperature, over two hours. Near STOP the float valve
// throttles the flow by its nature, and nothing is judged.
void post_shortfall(const Sources&, const LevelError&, Duration slice, const state::LearnedFlow&,
                    state::Balance&);

}  // namespace tidewright::ledger
