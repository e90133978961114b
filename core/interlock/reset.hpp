// A person's reset: asked for, then confirmed with the token of the answer.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/picture/picture.hpp"
#include "core/state/latch.hpp"

namespace tidewright::interlock {

// Carries out the event if it is a reset or a confirm, and answers it. A latch goes only when its
// cause is gone now, for a leak in two good live samples of every sensor; it starts nothing.
void reset(const picture::Picture&, const state::Findings&, const Event&, state::Latches&,
           state::Armed&, Effects&);

}  // namespace tidewright::interlock
