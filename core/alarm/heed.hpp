// What a person asks of the alarms: acknowledge, shelve, unshelve, test; and that a confirmed
// reset acknowledges.
#pragma once

#include "core/base/instant.hpp"
#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/state/alarm.hpp"

namespace tidewright::alarm {

// Does what may be done and answers; asks that are none of the alarms' business pass by.
// Unshelving takes effect in live() of the same step.
void heed(const Ask&, Instant now, state::Alarms&, Effects&);

}  // namespace tidewright::alarm
