// The standing demand for pure water and the metered transfer that serves it.
// Below START a demand stands; it is served to STOP through pauses and restarts; only reaching
// STOP, a person, or a latched trip ends it.
#pragma once

#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/base/units.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

enum class Demand : std::uint8_t {
  none,
  halted,    // ended by a person or a latched trip: waits for a person's start
  standing,  // level below START, or the hours of the day with a float that is not full
  asked,     // a person's start to STOP
  attended,  // a person's start with minutes
};

// Whether a demand wants water now.
constexpr bool asks_for_water(Demand demand) {
  return demand == Demand::standing || demand == Demand::asked || demand == Demand::attended;
}

struct MakeWater {
  Demand demand = Demand::none;
  Reason why{Why::no_demand, no_subject, {}};  // of the demand, of its end, or of none
  Instant since = long_ago;                    // of the demand
  Instant until = never;                       // attended and halted: when the minutes are over
  bool wants_water = false;                    // this pass: ask the interlock for ON
};

}  // namespace tidewright::state
