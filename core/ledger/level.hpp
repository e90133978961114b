// The vat's level as a story of rises and falls, free of the gauge's flicker.
#pragma once

#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// What the level did in this step.
struct LevelMove {
  Litres risen;
  Litres fallen;
};

// Takes up a good level. A rise counts above the highest so far, a fall beyond two gauge steps.
LevelMove post_level(const Sources&, state::LevelTrend&);

}  // namespace tidewright::ledger
