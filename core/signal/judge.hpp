// Measurements -> trusted signals. What an instrument's own readings say of it; compare.hpp adds
// what the others do. A reading passes the tests of this folder in this order: no_reading, range,
// age, rate, spike; silence is judged by time.
#pragma once

#include "core/base/instant.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"
#include "core/state/circumstances.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

// Second stage of step. Takes Reading, Refusal, Availability, Link and Started, and finds what has
// fallen silent.
// Danger (wet, high-high, full, feedback ON) is kept from any message that was a reading; a
// message of unknown age proves nothing else. One message that is no reading, or one leap, is
// counted and passed over; the second in a row costs the quality.
void judge(const room::Room&, const Event&, const state::Circumstances&, state::Signals&, Wake&);

}  // namespace tidewright::signal
