// Third test: how fast it can change. One leap is passed over, the same seen again is believed.
#pragma once

#include "core/base/instant.hpp"
#include "core/room/instrument.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

// Further from the last good value than the time since then allows, and not seen before.
bool is_leap(const room::Instrument&, const state::Signal&, double value, Instant now);

}  // namespace tidewright::signal
