// Trips, permissives, leases: wants and findings in, commands out.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/picture/picture.hpp"
#include "core/state/state.hpp"

namespace tidewright::interlock {

// Stage of step after the procedures. Cannot see an alarm, its acknowledgement or its shelf.
void decide(const picture::Picture&, const state::Findings&, const state::MakeWater&,
            const state::AttendedRuns&, const state::LeaseTest&, const Event&, state::Bypasses&,
            state::Latches&, state::Armed&, state::Drives&, Effects&, Wake&);

}  // namespace tidewright::interlock
