// Dissolved solids in settled running, thinned so that a few samples span the time and the litres
// that a median is judged over, however often the meter speaks.
#pragma once

#include "core/event.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// Takes up the event when it is a good reading of product, permeate or feed in settled running.
void post_samples(const Sources&, const Event&, state::Ledger&);

}  // namespace tidewright::ledger
