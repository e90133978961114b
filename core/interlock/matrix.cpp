#include "core/interlock/matrix.hpp"

#include "core/interlock/causes.hpp"

namespace tidewright::interlock {
namespace {

using picture::Picture;
using room::RuleId;
using state::Findings;

constexpr Holds trips{Hold::trip, Hold::trip};
constexpr Holds forces_off{Hold::force_off, Hold::force_off};
constexpr Holds inhibits{Hold::inhibit, Hold::inhibit};

// A trip stands while its cause does: after that the latch holds, and a reset need not wait for
// the alarm's off-delay.
template <RuleId id>
Cause tripping(const Picture&, const Findings& findings) {
  const state::Finding& finding = findings[id];
  if (!finding.active || !finding.raw) return std::nullopt;
  return finding.why;
}

// A lost signal that is back must stay for the finding's off-delay before it is trusted.
template <RuleId id>
Cause lost(const Picture& picture, const Findings& findings) {
  const state::Finding& finding = findings[id];
  if (!finding.active) return std::nullopt;
  if (finding.raw) return finding.why;
  const auto stays = static_cast<float>(seconds(picture.room.rules[id].off_delay));
  return Reason{Why::settling_after_loss, no_subject, {stays}};
}

// What comes back by itself stands through its off-delay too.
template <RuleId id>
Cause found(const Picture&, const Findings& findings) {
  if (!findings[id].active) return std::nullopt;
  return findings[id].why;
}

// The feed valve goes with the booster pump: line pressure alone would go on filling.
constexpr std::array rows{
    Row{"a leak sensor says wet", trips, tripping<RuleId::leak>, RuleId::leak},
    Row{"the high-high switch is reached", trips, tripping<RuleId::vat_high_high>,
        RuleId::vat_high_high},
    Row{"the fill does not stop", trips, tripping<RuleId::fill_not_stopping>,
        RuleId::fill_not_stopping},
    Row{"an actuator disobeys", trips, tripping<RuleId::actuator_disobeys>,
        RuleId::actuator_disobeys},
    Row{"the records of the run before could not be read", trips,
        tripping<RuleId::records_unreadable>, RuleId::records_unreadable},
    Row{"the daemon is going down", forces_off, is_stopping, {}},
    Row{"the link to the broker is down", forces_off, link_is_down, {}},
    Row{"a leak sensor is lost", forces_off, lost<RuleId::leak_sensor_lost>, {}},
    Row{"the high-high switch is not good", forces_off, high_high_not_good, {}},
    Row{"the gauge is lost", forces_off, lost<RuleId::level_lost>, RuleId::level_lost, 3},
    Row{"the gauge is not good", forces_off, level_not_good, {}},
    Row{"the float switch is not good", forces_off, float_not_good, {}},
    Row{"the vat is at STOP or its float switch says full", forces_off, vat_at_stop, {}},
    Row{"the level is flat while filling", forces_off, found<RuleId::level_flat_while_filling>,
        RuleId::level_flat_while_filling, 3},
    Row{"the fill takes too long", forces_off, found<RuleId::fill_overlong>, RuleId::fill_overlong,
        2},
    Row{"the pump runs dry", forces_off, found<RuleId::pump_dry>, RuleId::pump_dry, 5},
    Row{"the pump starts too often", forces_off, found<RuleId::short_cycling>,
        RuleId::short_cycling, 5},
    Row{"the product is over the file's stop figure", forces_off, product_over_stop, {}},
    Row{"a run or a day's running is at its limit", forces_off, ran_too_long, {}},
    Row{"a leak sensor has not been seen", inhibits, leak_not_seen, {}},
    Row{"unattended, and there is no leak sensor", forces_off, unattended_without_leak_sensor, {}},
    Row{"unattended, and nobody keeps the lease", forces_off, unattended_without_lease, {}},
    Row{"the run before ended without notice", inhibits, settling_after_start, {}},
    Row{"there is frost in the room", inhibits, frost, {}},
};

}  // namespace

std::span<const Row> matrix() { return rows; }

Hold hold_of(const Row& row, room::Role role) {
  switch (role) {
    case room::Role::booster_pump:
      return row.holds.booster_pump;
    case room::Role::feed_valve:
      return row.holds.feed_valve;
  }
  return Hold::trip;
}

}  // namespace tidewright::interlock
