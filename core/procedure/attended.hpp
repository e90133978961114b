// A person's runs of what make_water does not drive: transfer and mixing pump, heater, divert and
// flush valve. Wants only: the interlock decides.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/picture/picture.hpp"
#include "core/state/attended.hpp"

namespace tidewright::procedure {

// The longest run that a person can ask for: nothing but the minutes would end it.
inline constexpr Duration attended_longest = std::chrono::hours{4};

// Takes start and stop asks that name an actuator and answers them. A run ends with its minutes, a
// stop, a latch that holds the actuator, or a restart.
void attended(const picture::Picture&, const Event&, state::AttendedRuns&, Effects&, Wake&);

}  // namespace tidewright::procedure
