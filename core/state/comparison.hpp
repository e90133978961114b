// What the comparing of instruments with one another has to remember.
// Written by signal/ only.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/units.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

// The water at one place, as its meter tells it, be that a flow or a count.
struct WaterMeter {
  LitresPerHour rate;         // of the last reading; of a count, since the one before
  Litres passed;              // in all that was heard of; never falls
  Litres count;               // what a count showed last
  Litres at_quiet;            // `passed` when everything had been off for the run-down
  Instant heard = long_ago;   // the last reading that was booked; long_ago: begin anew
  Instant flowed = long_ago;  // the last one that showed flow
};

// A stretch of filling over which the vat's gain is compared with the product meter.
struct LevelWindow {
  bool open = false;
  Instant began = long_ago;
  Litres passed, level;  // at its beginning
  Litres highest;        // of the level since
  Litres passed_last;    // at the reading before
};

// A stretch over which product and concentrate are compared with the feed: `passed` at its
// beginning.
struct BalanceWindow {
  bool open = false;
  Litres feed, product, concentrate;
};

// In this order of places.
inline constexpr std::array<room::Place, 3> metered_places{room::Place::feed, room::Place::product,
                                                           room::Place::concentrate};

struct Comparison {
  std::array<WaterMeter, metered_places.size()> water;
  Instant quiet = never;  // since when everything is off; never: something is on
  LevelWindow level;
  BalanceWindow balance;
  Instant at_odds = never;  // since when pump power and flow contradict each other
  Instant compared = long_ago;
};

}  // namespace tidewright::state
