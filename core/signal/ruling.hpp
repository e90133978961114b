// Which of two instruments of the same quantity and place is believed.
#pragma once

#include <optional>

#include "core/room/room.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

// Of those that are good, the one that says the more dangerous: a higher level, more dissolved
// solids or flow, a lower temperature or pressure. Where none is good, so among the uncertain;
// else the first. None if there is no such instrument.
std::optional<room::InstrumentIndex> ruling(const room::Room&, const state::Signals&,
                                            room::Quantity, room::Place);

// The same, whatever their quality, as long as they say something of now: what danger is judged
// by. Where none does, the first that has ever spoken.
std::optional<room::InstrumentIndex> most_dangerous(const room::Room&, const state::Signals&,
                                                    room::Quantity, room::Place);

}  // namespace tidewright::signal
