// What the feed's dissolved solids usually are, and what they are lately.
#pragma once

#include "core/base/instant.hpp"
#include "core/base/units.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// Takes up a good reading in settled running. Time counts only as far as readings follow each
// other, so both means are over hours of running.
void follow_feed(PartsPerMillion reading, Instant now, state::FeedLevel&);

}  // namespace tidewright::ledger
