// When nothing comes: stale, said to be offline, or everything unknown after a start or a lost
// line.
#pragma once

#include "core/base/instant.hpp"
#include "core/room/instrument.hpp"
#include "core/state/circumstances.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

// After a start or a link loss nothing is known to be fresh. What an instrument that speaks on
// change said last is kept, to be good again when its availability is; but only if the daemon was
// deaf for a few minutes at most: it may have spoken since, and will not say it again. Its danger
// is believed all the same, as of unknown age.
void begin_anew(const room::Instrument&, state::Signal&, const state::Circumstances&,
                bool after_start);

// An instrument that speaks on change only is supervised by its availability: online, its last
// live value stands. Returns whether that value is to be taken up as if it came now.
bool set_available(const room::Instrument&, state::Signal&, bool online, Instant now);

// Finds what has been silent for too long, and asks for the instant at which it will have been.
void watch_silence(const room::Instrument&, state::Signal&, const state::Circumstances&, Wake&);

}  // namespace tidewright::signal
