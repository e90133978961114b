// Second test: what the instrument can measure at all. And, of what passes the others, what is
// believable in this room.
#pragma once

#include "core/room/instrument.hpp"

namespace tidewright::signal {

// A finite number within what the instrument can show. Outside it is no reading.
bool is_measurable(const room::Instrument&, double value);

// Within what the household holds possible. Outside it is a reading, but doubtful.
bool is_plausible(const room::Instrument&, double value);

}  // namespace tidewright::signal
