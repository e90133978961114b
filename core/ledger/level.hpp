// The vat's level as a story of rises and falls, free of the gauge's flicker.
#pragma once

#include <optional>

#include "core/ledger/sources.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::ledger {

// What the level did in this step.
struct LevelMove {
  Litres risen;
  Litres fallen;
};

// Takes up a new reading of the gauge, if there is one. Of a quiet gauge a rise counts above the
// highest so far and a fall beyond two gauge steps; a noisy one is smoothed first, and then either
// counts only beyond what the smoothed noise can do. Rises less falls are always the level's whole
// move: what is passed over now counts later.
LevelMove post_level(const Sources&, std::optional<Litres> reading, const state::GaugeNoise&,
                     state::LevelTrend&);

}  // namespace tidewright::ledger
