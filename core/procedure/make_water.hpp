// Wants water while a demand stands. Wants only: the interlock decides.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/picture/picture.hpp"
#include "core/state/make_water.hpp"

namespace tidewright::procedure {

// Takes start and stop asks and answers them; begins, keeps and ends the demand.
// Called once a step, after the rules; `latches` in the picture are those of the step before.
void make_water(const picture::Picture&, const Event&, state::MakeWater&, Effects&, Wake&);

}  // namespace tidewright::procedure
