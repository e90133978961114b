// What the ledger looks at.
#pragma once

#include "core/room/room.hpp"
#include "core/state/circumstances.hpp"
#include "core/state/drive.hpp"
#include "core/state/make_water.hpp"
#include "core/state/signal.hpp"

namespace tidewright::ledger {

// Drives and demand are those of the step before.
struct Sources {
  const room::Room& room;
  const state::Circumstances& circumstances;
  const state::Signals& signals;
  const state::Drives& drives;
  const state::MakeWater& make_water;
};

}  // namespace tidewright::ledger
