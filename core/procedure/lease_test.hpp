// Tries whether an actuator really goes off when the daemon falls silent: on for three times its
// lease while it is renewed, then no ON any more, and its feedback must say OFF in time.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/picture/picture.hpp"
#include "core/state/lease_test.hpp"

namespace tidewright::procedure {

// Takes a person's ask and answers it. Begins by itself, where one is due, at the end of a fill:
// the vat is nearly full, nothing stands against the pump, and the fill goes on afterwards.
// Whatever the interlock stops proves nothing. A restart ends a test, never a result.
void lease_test(const picture::Picture&, const Event&, state::LeaseTests&, Effects&, Wake&);

}  // namespace tidewright::procedure
