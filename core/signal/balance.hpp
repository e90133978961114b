// Product and concentrate together are the feed.
#pragma once

#include "core/signal/compare.hpp"

namespace tidewright::signal {

// Compared over each 20 L of feed, where all three are metered. Water that is missing leaks or is
// measured wrongly; which of the meters is wrong, nothing here knows, so all three are doubtful
// until a stretch agrees.
void balance_flows(const Beside&, state::Signals&, state::Comparison&);

}  // namespace tidewright::signal
