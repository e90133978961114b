// Whether something works just now, as far as it can be seen.
#pragma once

#include "core/room/room.hpp"
#include "core/state/drive.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

// The feedback where it is good, else the last command.
bool works(const room::Room&, const state::Signals&, const state::Drives&, room::ActuatorIndex);

// Nothing that moves the purifier's water works or is told to; false where the daemon switches none
// of that. A heater or a pump in the mixing vat makes no feed water flow.
bool feed_is_off(const room::Room&, const state::Signals&, const state::Drives&);

// The product runs to the drain in place of the vat.
bool is_diverted(const room::Room&, const state::Signals&, const state::Drives&);

// The purifier's driving actuator works.
bool purifies(const room::Room&, const state::Signals&, const state::Drives&);

}  // namespace tidewright::signal
