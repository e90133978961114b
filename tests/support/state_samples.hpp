// States with something in every field, for tests of what must come back whole.
#pragma once

#include "core/room/room.hpp"
#include "core/state/state.hpp"

namespace tidewright::support {

// Every field of the things that the room has differs from a fresh state's, and numbers from one
// another.
State every_field_set(const room::Room&);
// How many values that are, arrays counted by their elements.
long field_count(const room::Room&);

}  // namespace tidewright::support
