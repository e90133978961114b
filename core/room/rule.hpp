// The names of the rules, and of each rule what a household may set.
// The order is the priority of first causes in one pass. rules/catalogue holds their records.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "core/base/instant.hpp"

namespace tidewright::room {

enum class RuleId : std::uint8_t {
  leak,
  vat_high_high,
  fill_not_stopping,
  actuator_disobeys,
  leak_sensor_lost,
  level_lost,
  level_flat_while_filling,
  fill_overlong,
  pump_dry,
  short_cycling,
  frost,
  resin_breakthrough,
  water_balance_off,
  draw_unusual,
  vat_low,
  signal_doubtful,
  broker_lost,
  command_undelivered,
  store_failed,
  records_unreadable,
  unclean_start,
  lease_not_kept,
  membrane_rejection_low,
  resin_near_end,
  feed_changed,
  room_hot,
  water_aged,
  vat_cleaning_due,
  stock_low,
  bypass_active,
  proof_test_due,
};
inline constexpr std::size_t rule_count = 31;

struct RuleSettings {
  Duration on_delay{0};
  Duration off_delay{0};
  bool in_service = true;  // false: never announced; the trip works all the same
};

template <class T>
struct PerRule {
  std::array<T, rule_count> items{};
  T& operator[](RuleId id) { return items[static_cast<std::size_t>(id)]; }
  const T& operator[](RuleId id) const { return items[static_cast<std::size_t>(id)]; }
};

}  // namespace tidewright::room
