// Tries whether an actuator really goes off when the daemon falls silent: on for three times its
// lease while it is renewed, then no ON any more, and its feedback must say OFF in time.
#pragma once

#include "core/effect.hpp"
#include "core/event.hpp"
#include "core/picture/picture.hpp"
#include "core/state/lease_test.hpp"

namespace tidewright::procedure {

// Takes a person's ask and answers it; begins a test in a fill that has run for long enough and is
// nearly over, when one is due; ends tests with their result. What the interlock stops, proves
// nothing. A restart forgets the test under way, never a result.
void lease_test(const picture::Picture&, const Event&, state::LeaseTests&, Effects&, Wake&);

}  // namespace tidewright::procedure
