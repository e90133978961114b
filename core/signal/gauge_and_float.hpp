// The vat's gauge against the float switch above every other mark.
#pragma once

#include "core/signal/compare.hpp"

namespace tidewright::signal {

// While the high-high switch says wet, however old that word is, a gauge that shows less than STOP
// is wrong and bad.
void compare_gauge_with_float(const Beside&, state::Signals&);

}  // namespace tidewright::signal
