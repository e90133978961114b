// Clock times by calendar arithmetic alone: no time zone data, no locale.
#include <fmt/format.h>

#include <chrono>
#include <cstdlib>

#include "core/report/phrases.hpp"
#include "core/report/report.hpp"

namespace tidewright::report {
namespace {

using Local = std::chrono::sys_time<Duration>;

Local local(Instant at, const WallClock& wall) {
  return Local{at.time_since_epoch() + wall.ahead + wall.zone};
}

}  // namespace

std::string wall_time(Instant at, const WallClock& wall) {
  const Local time = local(at, wall);
  const auto midnight = std::chrono::floor<std::chrono::days>(time);
  const std::chrono::year_month_day date{midnight};
  const std::chrono::hh_mm_ss clock{std::chrono::floor<std::chrono::seconds>(time - midnight)};
  const auto zone = wall.zone.count();
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}{}{:02}:{:02}",
                     static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                     static_cast<unsigned>(date.day()), clock.hours().count(),
                     clock.minutes().count(), clock.seconds().count(), zone < 0 ? '-' : '+',
                     std::abs(zone) / 60, std::abs(zone) % 60);
}

std::string date(Instant at, const WallClock& wall) { return wall_time(at, wall).substr(0, 10); }

std::string clock_time(Instant at, const WallClock& wall) {
  const Local time = local(at, wall);
  const std::chrono::hh_mm_ss clock{time - std::chrono::floor<std::chrono::days>(time)};
  return fmt::format("{:02}:{:02}", clock.hours().count(), clock.minutes().count());
}

}  // namespace tidewright::report
