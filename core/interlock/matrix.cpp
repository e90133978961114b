#include "core/interlock/matrix.hpp"

#include <algorithm>
#include <array>

namespace tidewright::interlock {
namespace {

using picture::Picture;
using room::CauseId;
using room::RuleId;
using state::Findings;

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

// One letter for each role, in the order of Role: T trip, x force off, i inhibit, . nothing.
consteval Holds holds(std::string_view letters) {
  Holds result;
  for (std::size_t i = 0; i < room::role_count; ++i) {
    const char letter = letters.at(i);
    result.items[i] = letter == 'T'   ? Hold::trip
                      : letter == 'x' ? Hold::force_off
                      : letter == 'i' ? Hold::inhibit
                      : letter == '.' ? Hold::none
                                      : throw "not a letter of the matrix";
  }
  return result;
}

// The longest bypass. What ends a fill, of either vat, or covers a heater has none: the vat would
// run over, the heater burn. Neither have disobedience, limits, leases and the line to the broker.
constexpr Duration bypass_of_a_leak = std::chrono::minutes{60};
constexpr Duration bypass_else = std::chrono::hours{4};

// Columns: booster pump, feed valve, fill valve, transfer pump, mixing pump, heater, divert valve,
// flush valve. Feed and fill valve go with the booster pump: line pressure alone would go on
// filling.
constexpr std::array rows{
    Row{.id = CauseId::leak_wet,
        .cause = "a leak sensor says wet, or water flows with everything off",
        .holds = holds("TTTT..TT"),
        .stands = tripping<RuleId::leak>,
        .rule = RuleId::leak,
        .bypass_longest = bypass_of_a_leak},
    Row{.id = CauseId::high_high_wet,
        .cause = "the high-high switch is reached",
        .holds = holds("TTT....."),
        .stands = tripping<RuleId::vat_high_high>,
        .rule = RuleId::vat_high_high},
    Row{.id = CauseId::fill_not_stopping,
        .cause = "the fill does not stop",
        .holds = holds("TTTT..TT"),
        .stands = tripping<RuleId::fill_not_stopping>,
        .rule = RuleId::fill_not_stopping},
    Row{.id = CauseId::actuator_disobeys,
        .cause = "an actuator disobeys: OFF stops all that moves water, ON those that go with it",
        .holds = holds("TTTTTTTT"),
        .stands_for = disobedience,
        .rule = RuleId::actuator_disobeys},
    Row{.id = CauseId::records_unreadable,
        .cause = "the records of the run before could not be read",
        .holds = holds("TTTT..TT"),
        .stands = tripping<RuleId::records_unreadable>,
        .rule = RuleId::records_unreadable},
    Row{.id = CauseId::going_down,
        .cause = "the daemon is going down",
        .holds = holds("xxxxxxxx"),
        .stands = is_stopping},
    Row{.id = CauseId::link_down,
        .cause = "the link to the broker is down",
        .holds = holds("xxxxxxxx"),
        .stands = link_is_down},
    Row{.id = CauseId::leak_sensor_lost,
        .cause = "a leak sensor is lost",
        .holds = holds("xxxx..xx"),
        .stands = lost<RuleId::leak_sensor_lost>,
        .bypass_longest = bypass_of_a_leak},
    Row{.id = CauseId::high_high_lost,
        .cause = "the high-high switch is not good",
        .holds = holds("xxx....."),
        .stands = high_high_not_good,
        .bypass_longest = bypass_else},
    Row{.id = CauseId::level_lost,
        .cause = "the gauge is lost",
        .holds = holds("xxx....."),
        .stands = lost<RuleId::level_lost>,
        .rule = RuleId::level_lost,
        .latches_at_stop = 3},
    Row{.id = CauseId::level_not_good,
        .cause = "the gauge is not good",
        .holds = holds("xxx....."),
        .stands = level_not_good},
    Row{.id = CauseId::float_not_good,
        .cause = "the float switch is not good",
        .holds = holds("xxx....."),
        .stands = float_not_good},
    Row{.id = CauseId::vat_full,
        .cause = "the vat is at STOP or its float switch says full",
        .holds = holds("xxx....."),
        .stands = vat_at_stop},
    Row{.id = CauseId::level_flat,
        .cause = "the level is flat while filling",
        .holds = holds("xxx....."),
        .stands = found<RuleId::level_flat_while_filling>,
        .rule = RuleId::level_flat_while_filling,
        .latches_at_stop = 3},
    Row{.id = CauseId::fill_overlong,
        .cause = "the fill takes too long",
        .holds = holds("xxx....."),
        .stands = found<RuleId::fill_overlong>,
        .rule = RuleId::fill_overlong,
        .latches_at_stop = 2},
    Row{.id = CauseId::pump_dry,
        .cause = "the pump runs dry",
        .holds = holds("xxx....."),
        .stands = found<RuleId::pump_dry>,
        .rule = RuleId::pump_dry,
        .latches_at_stop = 5,
        .bypass_longest = bypass_else},
    Row{.id = CauseId::short_cycling,
        .cause = "the pump starts too often",
        .holds = holds("xxx....."),
        .stands = found<RuleId::short_cycling>,
        .rule = RuleId::short_cycling,
        .latches_at_stop = 5,
        .bypass_longest = bypass_else},
    Row{.id = CauseId::product_over_stop,
        .cause = "the product is over the file's stop figure; the pump by on_breakthrough, or "
                 "where the closed fill valve leaves no way out",
        .holds = holds("xxx....."),
        .stands_for = product_over_stop,
        .bypass_longest = bypass_else},
    Row{.id = CauseId::concentrate_full,
        .cause = "the concentrate vat is full, or its switch is not good",
        .holds = holds("xxx...xx"),
        .stands = concentrate_full,
        .bypass_longest = bypass_else},
    Row{.id = CauseId::level_low,
        .cause = "the vat that it draws from or stands in is below low",
        .holds = holds("...xxx.."),
        .stands_for = level_low},
    Row{.id = CauseId::mixing_level_not_good,
        .cause = "the mixing vat's gauge is not good, or the heater has none",
        .holds = holds("...x.x.."),
        .stands_for = mixing_level_not_good},
    Row{.id = CauseId::mixing_vat_full,
        .cause = "the mixing vat is at its stop mark",
        .holds = holds("...x...."),
        .stands = mixing_vat_full},
    Row{.id = CauseId::limit_reached,
        .cause = "its run or its day's running, or that of what it goes with, is at its limit",
        .holds = holds("xxxxxxxx"),
        .stands_for = ran_too_long},
    Row{.id = CauseId::leak_sensor_awaited,
        .cause = "a leak sensor has not been seen",
        .holds = holds("iiii..ii"),
        .stands = leak_not_seen,
        .bypass_longest = bypass_of_a_leak},
    Row{.id = CauseId::no_leak_sensor,
        .cause = "unattended, and there is no leak sensor",
        .holds = holds("xxx....."),
        .stands = unattended_without_leak_sensor},
    Row{.id = CauseId::lease_unsupervised,
        .cause = "unattended, and nobody keeps the lease",
        .holds = holds("xxx....."),
        .stands = unattended_without_lease},
    Row{.id = CauseId::lease_not_kept,
        .cause = "unattended, and a lease was not kept when it was tried",
        .holds = holds("xxx....."),
        .stands = unattended_without_kept_lease},
    Row{.id = CauseId::after_unclean_start,
        .cause = "the run before ended without notice",
        .holds = holds("iiiiiiii"),
        .stands = settling_after_start,
        .bypass_longest = bypass_else},
    Row{.id = CauseId::frost,
        .cause = "there is frost in the room",
        .holds = holds("iii...ii"),
        .stands = frost,
        .bypass_longest = bypass_else},
};

consteval bool in_order() {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].id != static_cast<CauseId>(i)) return false;
  }
  return rows.size() == room::cause_count;
}
static_assert(in_order());

}  // namespace

std::span<const Row> matrix() { return rows; }

bool trips(const Row& row) {
  return std::find(row.holds.items.begin(), row.holds.items.end(), Hold::trip) !=
         row.holds.items.end();
}

}  // namespace tidewright::interlock
