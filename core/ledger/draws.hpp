// Draws: water that leaves the vat in falls that follow one another.
#pragma once

#include "core/ledger/level.hpp"
#include "core/room/vat.hpp"
#include "core/state/balance.hpp"

namespace tidewright::ledger {

// Falls so far apart are two draws. [choice]
inline constexpr Duration between_draws = std::chrono::minutes{30};

// What the level's move adds to the present draw; a new one begins after half an hour without. One
// that the habit's steady fall explains, at half of what fell, is not counted as drawn by hand.
void post_draws(const LevelMove&, LitresPerHour habit, Instant now, const room::Vat&,
                state::Draws&);

// How often somebody draws by hand, an hour.
double draws_an_hour(const state::Draws&, Instant now);

// The largest draw that is still usual: twice the largest one known, which is slowly forgotten;
// while fewer than three are known, two fifths of the vat. An unusual one teaches a quarter more
// than that at most, so that a new habit is learned and a mishap is not.
Litres draw_usual(const room::Vat&, const state::Draws&);

}  // namespace tidewright::ledger
