// When a lost instrument counts as lost, and when as found again. For the rules of lost signals.
#pragma once

#include "core/picture/picture.hpp"

namespace tidewright::rules {

// Two good readings on end; one from an instrument that speaks only on change, where the second
// may take a day.
bool came_back(const picture::Picture&, room::InstrumentIndex);

// Seconds since its last reading, or since the start if there was none.
float seconds_without(const picture::Picture&, room::InstrumentIndex);

// Not heard live since the start or the link's return, and not overdue.
bool awaited(const state::Signal&);

}  // namespace tidewright::rules
