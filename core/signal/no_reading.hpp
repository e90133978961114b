// First test: messages that look like a reading and are none. What is no number at all, the door
// (daemon/intake) has refused already.
#pragma once

#include "core/base/instant.hpp"
#include "core/room/instrument.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

// The value that such an instrument says between getting its power and its first measurement: only
// after a gap, and only where it is out of line with what was. A vat may really be that warm.
bool is_power_up(const room::Instrument&, const state::Signal&, double value, Instant now);

}  // namespace tidewright::signal
