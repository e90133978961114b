// The pump's power against the flow that it makes.
#pragma once

#include "core/signal/compare.hpp"

namespace tidewright::signal {

// A pump that has drawn power for five minutes while the meter shows no flow runs against
// something closed, or one of the two is wrong: both are doubtful until they agree.
void compare_power_with_flow(const Beside&, state::Signals&, state::Comparison&, Wake&);

}  // namespace tidewright::signal
