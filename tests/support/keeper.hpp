// Who else looks after a pretend room: a person with habits, and a keeper who makes no mistakes.
#pragma once

#include <cstdint>
#include <functional>

#include "core/rehearsal/pretend_room.hpp"
#include "tests/support/theatre.hpp"

namespace tidewright::support {

// Looks in every ten minutes and may ask for something.
using Person = std::function<void(Theatre&)>;

// Every evening, if the vat is under three quarters, starts the pump for so long.
Person daily_person(Duration run);

// What the same works give to a keeper who sees the true level, fills from START (or, without
// marks, from three quarters) to STOP (or until the float valve closes), and is never in doubt.
Litres made_by_perfect_keeper(const room::Room&, const rehearsal::Settings&, std::uint64_t seed,
                              Duration lasting);

}  // namespace tidewright::support
