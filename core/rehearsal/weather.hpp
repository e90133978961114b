// How warm the feed water and the room are.
#pragma once

#include "core/base/instant.hpp"
#include "core/base/units.hpp"

namespace tidewright::rehearsal {

struct Weather {
  Celsius mean{14};
  Celsius season_swing{0};  // above and below the mean; warmest in the middle of August
  Celsius day_swing{0.5};   // warmest in the afternoon
};

Celsius temperature(const Weather&, Instant);

}  // namespace tidewright::rehearsal
