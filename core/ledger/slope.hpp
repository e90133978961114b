// How fast a level falls, from mean levels at equal distances, and how surely. Pure.
#pragma once

#include <span>

#include "core/base/units.hpp"
#include "core/state/balance.hpp"

namespace tidewright::ledger {

// What a mean level is known to.
struct LevelError {
  Litres deviation{};   // standard deviation of one mean level, by noise
  Litres rounding{};    // at most so much besides, by the gauge's steps; means do not lessen it
  double restless = 0;  // L2/h: variance of what comes and goes by itself, as a random walk
};

struct Fall {
  LitresPerHour rate;     // positive: the level falls
  LitresPerHour error;    // standard deviation; infinite where draws leave no line
  LitresPerHour bound;    // what the gauge's steps may feign at most
  LitresPerHour between;  // least rate that one more draw, too small to be seen, leaves credible
};

// The least-squares line through the levels, oldest first, `hours_apart`; three at least, no more
// than state::slices_max. What was drawn or poured at a stroke is no part of the fall: where the
// levels step beyond doubt the line steps too.
Fall fall(std::span<const float> levels, double hours_apart, const LevelError&);

// How much of the gauge's rounding survives in a mean of scattered readings: half a step for a
// gauge that does not scatter, nearly nothing where the scatter is a step wide.
Litres rounding(Litres step, Litres spread);

}  // namespace tidewright::ledger
