// START HERE. One function is the program: everything else feeds it or obeys it.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"
#include "core/state/state.hpp"

namespace tidewright {

// Lets one event happen to the room. Same inputs, same outputs, for ever.
//   room     as config/reader made it; never more instruments or actuators than room.hpp allows
//   state    of the step before; a fresh one is State{}, whose first event must be Started
//   event    at an instant not before the last one's (an earlier one counts as the last one's)
//   effects  cleared, then filled in the order in which they are to be carried out; if they do
//            not fit, it holds OFF for every actuator and the state says why
// Returns the next instant at which step must be called again, with Tick if nothing else comes.
// Allocates nothing, throws nothing, reads no clock.
Instant step(const room::Room& room, State& state, const Event& event, Effects& effects);

}  // namespace tidewright
