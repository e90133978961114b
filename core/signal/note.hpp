// What the daemon says of itself, noted before anything is judged.
#pragma once

#include "core/event.hpp"
#include "core/state/circumstances.hpp"

namespace tidewright::signal {

// First stage of step. Takes Link, Started, ClockSet, Recorded, Delivery and Stopping; keeps the
// time from running backwards.
void note(const Event&, state::Circumstances&);

}  // namespace tidewright::signal
