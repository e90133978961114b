// The same value again and again while it should change: a stuck or dried-up probe. The vat's
// gauge while filling is the rule level_flat_while_filling, for it knows the flow.
#pragma once

#include "core/signal/compare.hpp"

namespace tidewright::signal {

// Of dissolved solids change is expected while water runs, and only well above zero: pure water
// shows 0 for years. Of the others always, where the household says so. `elapsed` is the time
// since the last call.
void watch_flat_lines(const Beside&, Duration elapsed, state::Signals&, Wake&);

}  // namespace tidewright::signal
