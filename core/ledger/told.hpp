// What people tell: whether it can be, and the answer. ledger/samples, ledger/upkeep and
// ledger/proof act on it.
#pragma once

#include <optional>

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"

namespace tidewright::ledger {

// Why::done, or what is wrong with it.
Reason judge_tell(const room::Room&, const Tell&);

// Answers a Tell; any other event is passed over. `proved` is what came of a test that it tells of.
// Every fact is in the journal with who told it; what changes the ledger is also kept on the disk.
void answer_tell(const room::Room&, const Event&, const std::optional<Reason>& proved, Effects&);

}  // namespace tidewright::ledger
