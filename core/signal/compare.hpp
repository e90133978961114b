// What instruments say of one another. Disagreement makes both doubtful, and the more dangerous
// one rules: see ruling.hpp.
#pragma once

#include "core/base/instant.hpp"
#include "core/event.hpp"
#include "core/room/room.hpp"
#include "core/state/circumstances.hpp"
#include "core/state/comparison.hpp"
#include "core/state/drive.hpp"
#include "core/state/signal.hpp"

namespace tidewright::signal {

// What a comparison looks at besides the signals; drives are those of the step before.
struct Beside {
  const room::Room& room;
  const state::Circumstances& circumstances;
  const state::Drives& drives;
};

// Third stage of step: books the water meters, then makes each comparison that the room's
// instruments allow.
void compare(const Beside&, const Event&, state::Signals&, state::Comparison&, Wake&);

}  // namespace tidewright::signal
