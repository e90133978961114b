#include "core/rules/catalogue.hpp"

namespace tidewright::rules {

extern const Rule leak, vat_high_high, fill_not_stopping, actuator_disobeys, leak_sensor_lost,
    level_lost, level_flat_while_filling, fill_overlong, pump_dry, short_cycling, frost,
    resin_breakthrough, water_balance_off, draw_unusual, vat_low, signal_doubtful, broker_lost,
    command_undelivered, store_failed, records_unreadable, unclean_start, lease_not_kept,
    membrane_rejection_low, resin_near_end, feed_changed, room_hot, water_aged, vat_cleaning_due,
    stock_low, bypass_active, proof_test_due;

constinit const std::array<const Rule*, room::rule_count> catalogue{
    &leak,
    &vat_high_high,
    &fill_not_stopping,
    &actuator_disobeys,
    &leak_sensor_lost,
    &level_lost,
    &level_flat_while_filling,
    &fill_overlong,
    &pump_dry,
    &short_cycling,
    &frost,
    &resin_breakthrough,
    &water_balance_off,
    &draw_unusual,
    &vat_low,
    &signal_doubtful,
    &broker_lost,
    &command_undelivered,
    &store_failed,
    &records_unreadable,
    &unclean_start,
    &lease_not_kept,
    &membrane_rejection_low,
    &resin_near_end,
    &feed_changed,
    &room_hot,
    &water_aged,
    &vat_cleaning_due,
    &stock_low,
    &bypass_active,
    &proof_test_due,
};

const Rule& rule(room::RuleId id) { return *catalogue[static_cast<std::size_t>(id)]; }

std::optional<room::RuleId> rule_named(std::string_view name) {
  for (const Rule* rule : catalogue) {
    if (rule->name == name) return rule->id;
  }
  return std::nullopt;
}

room::PerRule<room::RuleSettings> default_settings() {
  room::PerRule<room::RuleSettings> settings;
  for (const Rule* rule : catalogue) {
    settings[rule->id] = {.on_delay = rule->on_delay, .off_delay = rule->off_delay};
  }
  return settings;
}

}  // namespace tidewright::rules
