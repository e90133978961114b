// What changes much is armed first, then confirmed with the token of the answer: within 30 s, and
// not by guessing.
#pragma once

#include <optional>

#include "core/event.hpp"
#include "core/state/latch.hpp"

namespace tidewright::interlock {

// A request that was armed may be confirmed for so long.
inline constexpr Duration armed_for = std::chrono::seconds{30};

// Keeps the request for its confirmation and says `answer`, which tells the token; or refuses after
// too many wrong ones.
Reason arm(const Ask&, Why answer, Instant now, state::Armed&);

// Why a confirmation does not count; none if it does.
std::optional<Reason> wrong_confirmation(const Ask&, Instant now, state::Armed&);

// Whether the reset of that alarm waits for its token now.
bool reset_is_armed(const state::Armed&, room::RuleId, Instant now);

}  // namespace tidewright::interlock
