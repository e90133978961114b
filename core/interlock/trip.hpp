// Which rows stand, and which of them latch.
#pragma once

#include "core/interlock/matrix.hpp"
#include "core/state/bypass.hpp"
#include "core/state/latch.hpp"

namespace tidewright::interlock {

// The strongest hold on one actuator, and the first reason for it.
struct Held {
  Hold hold = Hold::none;
  Reason why;
};

struct HeldActuators {
  std::array<Held, room::actuators_max> items{};
  bool latched_anew = false;  // a latch was set in this pass
  Held& operator[](room::ActuatorIndex i) { return items[i]; }
  const Held& operator[](room::ActuatorIndex i) const { return items[i]; }
};

// Goes through the matrix once: sets latches, marks first causes, and tells what is held. A latch
// holds the roles that its cause stopped until it is reset; a bypassed cause counts as gone, but
// lifts no latch.
HeldActuators trip(const picture::Picture&, const state::Findings&, const state::Bypasses&,
                   state::Latches&);

}  // namespace tidewright::interlock
