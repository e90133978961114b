// Running time of each actuator.
#pragma once

#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// Books `elapsed` on every actuator that was working, then takes up what works from now on.
void post_working(const Sources&, Duration elapsed, state::Ledger&);

}  // namespace tidewright::ledger
