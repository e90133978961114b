// How the alarm stage speaks: nothing is announced that the store does not hold first.
#pragma once

#include "core/effect.hpp"
#include "core/state/alarm.hpp"

namespace tidewright::alarm {

// Asks for one Persist in this pass.
void persist(Effects&);

// Announces the alarm as it is, and notes when.
void announce(room::RuleId, state::Alarm&, Announced, Instant now, Effects&);

}  // namespace tidewright::alarm
