// Fourth test: what stands out from its neighbours in time. Where the household asks for it, the
// median of three or five readings is believed in place of each; one or two outliers are then as
// if they had not been.
#pragma once

#include "core/room/instrument.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

// Takes the reading up among the latest and returns their median; the reading itself where no
// median is asked for, or too few have been heard.
double despiked(const room::Instrument&, state::Signal&, double value);

}  // namespace tidewright::signal
