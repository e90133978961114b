// A person's start and stop.
#pragma once

#include <optional>

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/picture/picture.hpp"
#include "core/procedure/held_by_latch.hpp"
#include "core/state/make_water.hpp"

namespace tidewright::procedure {

// The first latch that holds what drives the purifier: it ends the demand and forbids a start.
std::optional<Reason> held_by_latch(const picture::Picture&);

// Carries out the event if it is a start or a stop, and answers it: done, or refused and why.
void take_ask(const picture::Picture&, const Event&, state::MakeWater&, Effects&);

}  // namespace tidewright::procedure
