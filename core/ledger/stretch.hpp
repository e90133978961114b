// The levels of the present stretch of standing or running, sliced into equal times.
#pragma once

#include "core/ledger/slope.hpp"
#include "core/room/instrument.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// How long one slice is: ten minutes of standing, three of running, longer for a slow gauge.
Duration slice_of(const room::Instrument& gauge, bool standing);

// What one slice's mean level is known to.
LevelError level_error(const room::Instrument& gauge, bool standing, const state::GaugeNoise&);

// Carries the stretch forward by `elapsed`, during which the gauge stood at `held`. Returns true
// when a slice has become full.
bool post_stretch(const room::Instrument& gauge, Duration elapsed, state::Stretch&);

}  // namespace tidewright::ledger
