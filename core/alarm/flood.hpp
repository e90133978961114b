// Many new alarms in a few minutes have one cause. They are told as one summary that begins with
// the first of them; what is urgent is told by itself all the same.
#pragma once

#include "core/effect.hpp"
#include "core/room/room.hpp"
#include "core/state/alarm.hpp"

namespace tidewright::alarm {

inline constexpr Duration flood_within = std::chrono::minutes{10};

// Whether it came within the last ten minutes.
bool is_new(const state::Alarm&, Instant now);

// Whether so many are new that they are not told one by one.
bool flooding(const state::Alarms&, Instant now);

// Tells the alarms that were kept back: as one summary, one in ten minutes at most; or, when the
// flood is over, each by itself. Called once a step, after every alarm has lived.
void tell_kept_back(state::Alarms&, state::Flood&, Instant now, Effects&, Wake&);

}  // namespace tidewright::alarm
