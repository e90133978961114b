// A hidden leak: the level falls steadily while nothing runs, faster than by habit.
#pragma once

#include "core/ledger/slope.hpp"
#include "core/room/room.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// False alarms a year that chance may make, at most, if the level falls all the year exactly as
// fast as is still allowed. Six slices an hour, 8766 hours and six windows are 316,000 tests a
// year; by the union bound each may err once in 3.2 million, which a normal error does beyond five
// deviations. A level that falls slower than is allowed errs far more rarely.
inline constexpr double false_leaks_a_year = 0.1;
inline constexpr double leak_deviations = 5;

// What a gauge may drift: 1 mm/h on 0.5 m2. A fall that is slower is never called a leak. [choice]
inline constexpr LitresPerHour drift_allowed{0.5};

// Learned three times at least.
bool is_known(const state::Habit&);

// The fall that is still no leak: the habit, as far as it may be one, and the drift.
LitresPerHour fall_allowed(const room::Room&, const state::Habit&);

// Called when a slice of standing has become full: learns the habit and finds or ends the leak.
void post_leak(const room::Room&, const LevelError& noise, Duration slice, Instant now,
               state::Balance&);

}  // namespace tidewright::ledger
