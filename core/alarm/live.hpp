// The life cycle of every alarm, once a step, after the interlock: it tells people what was found
// and done, and what they did in return. It cannot change a command.
#pragma once

#include "core/base/instant.hpp"
#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"
#include "core/state/alarm.hpp"
#include "core/state/circumstances.hpp"
#include "core/state/finding.hpp"
#include "core/state/latch.hpp"

namespace tidewright::alarm {

// Lets this step's findings and latches, a person's ask and the time act on the alarms.
// Pushes Announcements, each behind a Persist; Answers to acknowledge, shelve, unshelve and test.
// Reset and confirm are answered by the interlock before; a confirm that was done is seen here as
// an Answer among the effects, and acknowledges.
// While there is no line to the broker nothing is said again: whatever is due then is said once,
// when the line is back. What was told only before a restart is said again a minute after it.
void live(const room::Room&, const Event&, const state::Findings&, const state::Latches&,
          const state::Circumstances&, state::Alarms&, state::Flood&, Effects&, Wake&);

}  // namespace tidewright::alarm
