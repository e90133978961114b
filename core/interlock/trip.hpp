// Which rows stand, and which of them latch.
#pragma once

#include "core/interlock/matrix.hpp"
#include "core/state/latch.hpp"

namespace tidewright::interlock {

// The strongest hold on one role, and the first reason for it.
struct Held {
  Hold hold = Hold::none;
  Reason why;
};

struct HeldRoles {
  Held booster_pump;
  Held feed_valve;
  bool latched_anew = false;  // a latch was set in this pass
};

const Held& held(const HeldRoles&, room::Role);

// Goes through the matrix once: sets latches, marks first causes, and tells what is held. A latch
// holds every role until it is reset.
HeldRoles trip(const picture::Picture&, const state::Findings&, state::Latches&);

}  // namespace tidewright::interlock
