// How long it may take in truth until a relay that is not to be closed has opened, whatever gets
// lost: asked by the checkers that look at the room itself.
#pragma once

#include "core/nights/fault.hpp"
#include "core/nights/invariant.hpp"

namespace tidewright::nights {

// Nothing more is ordered, and the lease must end it: lease, one pass, the way to the plug and its
// travel, and what the plan's faults that touch the time from `since` to now add.
Duration lease_to_off(const Moment&, room::ActuatorIndex, Instant since);

// Whether a fault with that excuse touches that subject in the time from `since` to now.
bool excused(const Moment&, Excuse, std::uint8_t subject, Instant since);

// Whether its relay may stay closed though no ON is sent: it is welded, or has lost its timer.
bool stays_on(const Moment&, room::ActuatorIndex, Instant since);

}  // namespace tidewright::nights
