// The state as text: one line `path value` for each field that is not as in a fresh state, in the
// order of core/state/fields.hpp, things by their names. Two states of one room are equal if and
// only if their texts are. Kept in state.db, opens each chapter of the journal, compared by tests.
#pragma once

#include <string>
#include <string_view>

#include "core/room/room.hpp"
#include "core/state/state.hpp"

namespace tidewright::store {

std::string to_text(const room::Room&, const State&);

// What the text says, over a fresh state. Lines of things that the room does not have (the
// household's file has changed) are passed over; false if a line that concerns it cannot be read
// or says what no state can hold.
bool from_text(const room::Room&, std::string_view text, State&);

}  // namespace tidewright::store
