// Numbers what is announced and remembers the last of it.
#pragma once

#include "core/base/instant.hpp"
#include "core/effect.hpp"
#include "core/state/notice.hpp"

namespace tidewright::alarm {

// Called at the end of a step, when everything that is to be announced stands among the effects.
void enter(const Effects&, Instant now, state::Notices&);

}  // namespace tidewright::alarm
