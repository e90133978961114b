// The only clock of the daemon: makes every Instant. Any thread may read it.
#pragma once

#include <chrono>

#include "core/base/instant.hpp"

namespace tidewright {

class Clock {
 public:
  // Goes on where the run before stood (`before` = its last record and the wall clock it believed
  // in; long_ago at the very first start), or at the wall clock's present time.
  // `pace` > 1 makes the room's time run that much faster than the world's, for demonstrations.
  Clock(Instant before, const WallClock& wall_before, double pace);

  // Never runs backwards; counts while the machine sleeps, too, so that what slept is stale.
  Instant now() const;
  // How the wall clock stands now; with a pace, as it stood at the start.
  WallClock wall() const;
  // How long, by the world's time, until `at`; 0 if it is past, at most an hour.
  std::chrono::nanoseconds until(Instant at) const;

 private:
  std::chrono::nanoseconds began_;  // since the machine's start
  Instant first_;
  double pace_;
  WallClock wall_;  // at the start
};

// Whether a person would notice the difference: a step of the clock, or of the zone.
bool stepped(const WallClock& before, const WallClock& after);

}  // namespace tidewright
