// The only maker of commands.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/interlock/trip.hpp"
#include "core/state/drive.hpp"

namespace tidewright::interlock {

// What one actuator is to do in this pass.
struct Order {
  bool wanted = false;
  Reason want;
  Held held;
  bool renewed = true;  // false: its lease is tried by silence, of us and of our own clock
};

// Switches, renews, repeats or answers for one actuator. Requires the link's state in the picture;
// while it is down nothing is sent and the actuator counts as off (its lease ends it).
void command(const picture::Picture&, const Event&, room::ActuatorIndex, const Order&,
             state::Drive&, Effects&, Wake&);

}  // namespace tidewright::interlock
