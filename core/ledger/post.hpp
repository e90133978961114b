// Everything that accumulates, carried forward to this instant.
#pragma once

#include "core/event.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// Third stage of step. The time since the last posting is booked on what was working during it.
void post(const Sources&, const Event&, state::Ledger&);

}  // namespace tidewright::ledger
