// Three stories of a level that rose and rises no more: it flows on as before; it came to a stop;
// it flows on, but somebody drew water, once or twice. Pure; called by ledger/shortfall.
#pragma once

#include <span>

namespace tidewright::ledger {

// The levels up to a place, as a line that is drawn on beyond it.
struct Lead {
  double level = 0;  // litres, at the place
  double slope = 0;  // litres a slice
};

// How often draws are known to happen: the seen ones by their number; of those too small to be seen
// one by one, the restlessness is the litres of each, squared, an hour.
struct DrawsKnown {
  double seen;      // an hour
  double restless;  // L2/h
};

// How badly each story tells the levels after a lead: litres squared that it leaves unexplained,
// and what it must explain beyond the others for being seldom.
struct Stories {
  double stops = 0;
  double drawn = 0;
  double beyond_doubt = 0;  // how much better a stop tells them than that it flows on
  double rate = 0;          // litres a slice since the lead
};

// `after`: mean levels of equal slices, oldest first, 20 at most; `hours` long in all; each known
// to `variance`, litres squared.
Stories stories(std::span<const float> after, const Lead&, const DrawsKnown&, double hours,
                double variance);

inline constexpr std::size_t story_longest = 20;  // slices

}  // namespace tidewright::ledger
