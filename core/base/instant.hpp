// Time as the room counts it: one line of milliseconds that never runs backwards.
// The daemon makes each Instant (daemon/clock); core only compares and adds.
#pragma once

#include <chrono>
#include <cstdint>

namespace tidewright {

// Milliseconds since 1970 as first believed at installation, carried on by monotonic time.
// A step of the wall clock never moves it; after a restart it goes on at or after where it was,
// so that a stored instant keeps its meaning.
struct RoomClock {
  using rep = std::int64_t;
  using period = std::milli;
  using duration = std::chrono::duration<rep, period>;
  using time_point = std::chrono::time_point<RoomClock>;
  static constexpr bool is_steady = true;
};

using Instant = RoomClock::time_point;
using Duration = RoomClock::duration;

// "It has not happened": older than every instant, and safe to subtract from one.
inline constexpr Instant long_ago{Duration{0}};
// "No deadline": later than every instant; never add to it.
inline constexpr Instant never{Duration::max()};

inline double hours(Duration d) { return static_cast<double>(d.count()) / 3'600'000.0; }
inline double seconds(Duration d) { return static_cast<double>(d.count()) / 1'000.0; }

// How the wall clock stands against the room's line of time, for words and hours of the day only.
struct WallClock {
  Duration ahead{0};             // UTC minus Instant
  std::chrono::minutes zone{0};  // local time minus UTC
  friend bool operator==(const WallClock&, const WallClock&) = default;
};

// Since the household's own midnight: 0 to less than 24 h.
inline Duration time_of_day(Instant at, const WallClock& wall) {
  const Duration local = at.time_since_epoch() + wall.ahead + wall.zone;
  return local - std::chrono::floor<std::chrono::days>(local);
}

// The earliest of the deadlines that the stages ask for.
struct Wake {
  Instant at = never;
  void by(Instant deadline) {
    if (deadline < at) at = deadline;
  }
};

}  // namespace tidewright
