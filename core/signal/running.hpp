// Whether something works just now, as far as it can be seen.
#pragma once

#include "core/room/room.hpp"
#include "core/state/drive.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

// The feedback where it is good, else the last command.
bool works(const room::Room&, const state::Signals&, const state::Drives&, room::ActuatorIndex);

// No actuator works or is told to; false where the daemon switches nothing.
bool all_off(const room::Room&, const state::Signals&, const state::Drives&);

// The purifier's driving actuator works.
bool purifies(const room::Room&, const state::Signals&, const state::Drives&);

}  // namespace tidewright::signal
