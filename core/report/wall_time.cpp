// Clock times by calendar arithmetic alone: no time zone data, no locale.
#include <fmt/format.h>

#include <chrono>
#include <cstdlib>

#include "core/report/phrases.hpp"
#include "core/report/report.hpp"

namespace tidewright::report {

std::string wall_time(Instant at, const WallClock& wall) {
  const std::chrono::sys_time<Duration> local{at.time_since_epoch() + wall.ahead + wall.zone};
  const std::chrono::year_month_day date{std::chrono::floor<std::chrono::days>(local)};
  const std::chrono::hh_mm_ss clock{
      std::chrono::floor<std::chrono::seconds>(time_of_day(at, wall))};
  const auto zone = wall.zone.count();
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}{}{:02}:{:02}",
                     static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                     static_cast<unsigned>(date.day()), clock.hours().count(),
                     clock.minutes().count(), clock.seconds().count(), zone < 0 ? '-' : '+',
                     std::abs(zone) / 60, std::abs(zone) % 60);
}

std::string date(Instant at, const WallClock& wall) { return wall_time(at, wall).substr(0, 10); }

std::string clock_time(Instant at, const WallClock& wall) {
  const std::chrono::hh_mm_ss clock{time_of_day(at, wall)};
  return fmt::format("{:02}:{:02}", clock.hours().count(), clock.minutes().count());
}

}  // namespace tidewright::report
