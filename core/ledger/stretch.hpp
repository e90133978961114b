// The levels of the present stretch of standing or running, sliced into equal times.
#pragma once

#include "core/ledger/level.hpp"
#include "core/ledger/slope.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// How long one slice is: ten minutes of standing, five of running, longer for a coarse gauge.
Duration slice_of(const room::Instrument& gauge, bool standing);

// What one slice's mean level is known to.
LevelError level_error(const room::Instrument& gauge, bool standing, const state::GaugeNoise&);

// Carries the stretch forward by `elapsed`, during which the gauge stood at `held`. Returns true
// when a slice has become full. `leapt`: water was drawn or poured at a stroke just now.
bool post_stretch(const room::Instrument& gauge, Litres held, Duration elapsed, bool leapt,
                  state::Stretch&);

// A draw too small to leap shows an hour later, between six slices and six: it is taken out too.
// Returns its litres, or 0.
Litres take_out_draw(const LevelError&, state::Stretch&);

}  // namespace tidewright::ledger
