#include "core/rehearsal/weather.hpp"

#include <cmath>
#include <numbers>

namespace tidewright::rehearsal {

Celsius temperature(const Weather& weather, Instant at) {
  const double days = hours(at.time_since_epoch()) / 24;
  const double warmest_day = 227;  // 15 August
  const double warmest_hour = 16.0 / 24;
  const double season = std::cos(2 * std::numbers::pi * (days - warmest_day) / 365.25);
  const double day = std::cos(2 * std::numbers::pi * (days - warmest_hour));
  return weather.mean + weather.season_swing * season + weather.day_swing * day;
}

}  // namespace tidewright::rehearsal
