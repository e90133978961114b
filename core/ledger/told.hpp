// What people tell: whether it can be. ledger/samples, ledger/upkeep and ledger/proof act on it.
#pragma once

#include "core/event.hpp"
#include "core/room/room.hpp"

namespace tidewright::ledger {

// Why::done, or what is wrong with it.
Reason judge_tell(const room::Room&, const Tell&);

// Whether what is told must be on the disk before it is answered. What a test proves is
// ledger/proof's own matter.
bool changes_the_ledger(TellKind);

}  // namespace tidewright::ledger
