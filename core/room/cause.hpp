// The causes for which the interlock holds actuators back, by name. Their order is the order of
// precedence: of several that stand, the first is told. interlock/matrix holds what each does.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace tidewright::room {

enum class CauseId : std::uint8_t {
  leak_wet,
  high_high_wet,
  fill_not_stopping,
  actuator_disobeys,
  records_unreadable,
  going_down,
  link_down,
  leak_sensor_lost,
  high_high_lost,
  level_lost,
  level_not_good,
  float_not_good,
  vat_full,
  level_flat,
  fill_overlong,
  pump_dry,
  short_cycling,
  product_over_stop,
  concentrate_full,
  level_low,
  mixing_level_not_good,
  mixing_vat_full,
  limit_reached,
  leak_sensor_awaited,
  no_leak_sensor,
  lease_unsupervised,
  lease_not_kept,
  after_unclean_start,
  frost,
};
inline constexpr std::size_t cause_count = 29;

inline constexpr std::array<std::string_view, cause_count> cause_names{
    "leak_wet",
    "high_high_wet",
    "fill_not_stopping",
    "actuator_disobeys",
    "records_unreadable",
    "going_down",
    "link_down",
    "leak_sensor_lost",
    "high_high_lost",
    "level_lost",
    "level_not_good",
    "float_not_good",
    "vat_full",
    "level_flat",
    "fill_overlong",
    "pump_dry",
    "short_cycling",
    "product_over_stop",
    "concentrate_full",
    "level_low",
    "mixing_level_not_good",
    "mixing_vat_full",
    "limit_reached",
    "leak_sensor_awaited",
    "no_leak_sensor",
    "lease_unsupervised",
    "lease_not_kept",
    "after_unclean_start",
    "frost",
};

// Empty for a value that is no cause.
constexpr std::string_view name(CauseId id) {
  const auto index = static_cast<std::size_t>(id);
  return index < cause_count ? cause_names[index] : std::string_view{};
}

}  // namespace tidewright::room
