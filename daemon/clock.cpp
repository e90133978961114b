#include "daemon/clock.hpp"

#include <algorithm>
#include <ctime>

namespace tidewright {
namespace {

using std::chrono::nanoseconds;

nanoseconds read(clockid_t id) {
  timespec t{};
  clock_gettime(id, &t);
  return std::chrono::seconds{t.tv_sec} + nanoseconds{t.tv_nsec};
}

Duration world_time() { return std::chrono::floor<Duration>(read(CLOCK_REALTIME)); }

std::chrono::minutes zone_now() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return std::chrono::floor<std::chrono::minutes>(std::chrono::seconds{local.tm_gmtoff});
}

}  // namespace

Clock::Clock(Instant before, const WallClock& wall_before, double pace)
    : began_(read(CLOCK_BOOTTIME)), pace_(pace) {
  const Duration ahead = before == long_ago ? Duration{0} : wall_before.ahead;
  first_ = std::max(before, Instant{world_time() - ahead});
  wall_ = {world_time() - first_.time_since_epoch(), zone_now()};
}

Instant Clock::now() const {
  const nanoseconds since = read(CLOCK_BOOTTIME) - began_;
  return first_ + std::chrono::floor<Duration>(since * pace_);
}

WallClock Clock::wall() const {
  if (pace_ != 1) return wall_;
  return {world_time() - now().time_since_epoch(), zone_now()};
}

nanoseconds Clock::until(Instant at) const {
  constexpr Duration longest = std::chrono::hours{1};
  const Duration left = std::clamp(at - now(), Duration{0}, longest);
  return std::chrono::ceil<nanoseconds>(left / pace_);
}

bool stepped(const WallClock& before, const WallClock& after) {
  constexpr Duration noticed{1'000};
  return before.zone != after.zone || std::chrono::abs(before.ahead - after.ahead) > noticed;
}

}  // namespace tidewright
