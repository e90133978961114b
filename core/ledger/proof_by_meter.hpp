// What every run proves by itself where a meter counts the water.
#pragma once

#include "core/event.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/comparison.hpp"
#include "core/state/ledger.hpp"
#include "core/state/proof.hpp"

namespace tidewright::ledger {

// The gauge against the metered litres of each fill; and, where a valve stops the water, that none
// flows in any more 10 s after everything is off.
void post_proofs_by_meter(const Sources&, const Event&, const state::Comparison&,
                          const state::Fill&, state::Proofs&);

}  // namespace tidewright::ledger
