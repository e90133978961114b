// How fast a level falls, from mean levels at equal distances, and how surely. Pure.
#pragma once

#include <span>

#include "core/base/units.hpp"

namespace tidewright::ledger {

// What a mean level is known to.
struct LevelError {
  Litres deviation{};   // standard deviation of one mean level, by noise
  Litres rounding{};    // at most so much besides, by the gauge's steps; means do not lessen it
  double restless = 0;  // L2/h: variance of what comes and goes by itself, as a random walk
};

struct Fall {
  LitresPerHour rate;     // positive: the level falls
  LitresPerHour error;    // standard deviation
  LitresPerHour bound;    // what the gauge's steps may feign at most
  LitresPerHour between;  // least rate that one draw among the levels leaves credible
};

// The least-squares line through the levels, oldest first, `hours_apart`. Needs six at least.
// `between` is the least over every place at which a draw too small to be noticed may hide: the
// slope of both its sides, less 3.3 deviations. A leak falls steadily between draws.
Fall fall(std::span<const float> levels, double hours_apart, const LevelError&);

// How far the levels after `at` lie below those before it, beyond what one slope for all explains.
// The level at `at` itself, in which the step may have come, is left out. One at least stands on
// either side, five in all.
struct Step {
  double size = 0;
  double error = 0;  // standard deviation, where each level's is 1
};
Step step_down(std::span<const float> levels, std::size_t at);

// How much of the gauge's rounding survives in a mean of scattered readings: half a step for a
// gauge that does not scatter, nearly nothing where the scatter is a step wide.
Litres rounding(Litres step, Litres spread);

}  // namespace tidewright::ledger
