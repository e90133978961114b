// What happened between the last record of the state and the end of the run is in the journal
// only: it is lived through again, so that no total falls and nothing is announced twice.
#pragma once

#include "core/room/room.hpp"
#include "daemon/store/journal_file.hpp"
#include "daemon/store/state_file.hpp"

namespace tidewright::store {

// Called once, at the start. `kept` is what the state file held, or fresh if it was not read: then
// the newest chapter of the journal is where it begins.
void catch_up(const JournalFile&, const StateFile&, const room::Room&, Kept& kept);

}  // namespace tidewright::store
