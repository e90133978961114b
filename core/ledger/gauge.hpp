// The vat's gauge as an instrument that scatters: its new readings, and how far they can be
// trusted.
#pragma once

#include <optional>

#include "core/event.hpp"
#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// The level that this event has brought, if it is a good reading of the gauge.
std::optional<Litres> new_level(const Sources&, const Event&);

// Learns the scatter of one reading from three neighbours: twice the middle one less the outer two
// is free of any steady rise or fall. An outlier counts for no more than four times what is usual,
// so that a bucket drawn is not noise.
void post_gauge_noise(const Sources&, Litres reading, state::GaugeNoise&);

}  // namespace tidewright::ledger
