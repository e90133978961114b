// Two instruments of the same quantity at the same place.
#pragma once

#include "core/signal/compare.hpp"

namespace tidewright::signal {

// Twins that differ for longer than both need to be heard of three times are doubtful, both, until
// they agree again: nothing here knows which of them is wrong.
void compare_twins(const Beside&, state::Signals&, Wake&);

}  // namespace tidewright::signal
