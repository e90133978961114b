// A person takes one cause out of the interlock for a while: who, why and how long are kept and
// shown. It is asked for, then confirmed. What may not be bypassed has no time in the matrix.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/picture/picture.hpp"
#include "core/state/bypass.hpp"

namespace tidewright::interlock {

// Where a person does not say for how long.
inline constexpr Duration bypass_usual = std::chrono::minutes{30};

// Carries out the event if it is about a bypass, and answers it. A restart ends all of them.
void bypass(const picture::Picture&, const Event&, state::Bypasses&, Effects&, Wake&);

}  // namespace tidewright::interlock
