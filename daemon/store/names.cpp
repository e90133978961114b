#include "daemon/store/names.hpp"

#include <array>

#include "core/rules/catalogue.hpp"

namespace tidewright::store {
namespace {

template <class Enum>
struct Word {
  Enum value;
  std::string_view word;
};

template <class Enum>
constexpr std::array<Word<Enum>, 0> words{};

template <>
constexpr auto words<Quality> = std::to_array<Word<Quality>>({
    {Quality::bad, "bad"},
    {Quality::uncertain, "uncertain"},
    {Quality::good, "good"},
});

template <>
constexpr auto words<DeviceStatus> = std::to_array<Word<DeviceStatus>>({
    {DeviceStatus::normal, "normal"},
    {DeviceStatus::failure, "failure"},
    {DeviceStatus::check_function, "check_function"},
    {DeviceStatus::out_of_specification, "out_of_specification"},
    {DeviceStatus::maintenance_required, "maintenance_required"},
});

template <>
constexpr auto words<state::Suppression> = std::to_array<Word<state::Suppression>>({
    {state::Suppression::none, "none"},
    {state::Suppression::shelved, "shelved"},
    {state::Suppression::by_design, "by_design"},
    {state::Suppression::out_of_service, "out_of_service"},
});

template <>
constexpr auto words<Announced> = std::to_array<Word<Announced>>({
    {Announced::raised, "raised"},
    {Announced::reminder, "reminder"},
    {Announced::cleared, "cleared"},
    {Announced::test, "test"},
    {Announced::summary, "summary"},
    {Announced::digest, "digest"},
});

template <>
constexpr auto words<state::Demand> = std::to_array<Word<state::Demand>>({
    {state::Demand::none, "none"},
    {state::Demand::halted, "halted"},
    {state::Demand::standing, "standing"},
    {state::Demand::asked, "asked"},
    {state::Demand::attended, "attended"},
});

template <>
constexpr auto words<state::LeasePhase> = std::to_array<Word<state::LeasePhase>>({
    {state::LeasePhase::none, "none"},
    {state::LeasePhase::waiting, "waiting"},
    {state::LeasePhase::renewed, "renewed"},
    {state::LeasePhase::silent, "silent"},
    {state::LeasePhase::cut, "cut"},
    {state::LeasePhase::over, "over"},
});

template <>
constexpr auto words<Arrival> = std::to_array<Word<Arrival>>({
    {Arrival::live, "live"},
    {Arrival::retained, "retained"},
    {Arrival::dated, "dated"},
});

template <>
constexpr auto words<AskKind> = std::to_array<Word<AskKind>>({
    {AskKind::acknowledge, "acknowledge"},
    {AskKind::shelve, "shelve"},
    {AskKind::unshelve, "unshelve"},
    {AskKind::reset, "reset"},
    {AskKind::confirm, "confirm"},
    {AskKind::start, "start"},
    {AskKind::stop, "stop"},
    {AskKind::test, "test"},
    {AskKind::bypass, "bypass"},
    {AskKind::confirm_bypass, "confirm_bypass"},
    {AskKind::end_bypass, "end_bypass"},
    {AskKind::test_lease, "test_lease"},
});

template <>
constexpr auto words<TellKind> = std::to_array<Word<TellKind>>({
    {TellKind::measured, "measured"},
    {TellKind::rotated, "rotated"},
    {TellKind::replaced, "replaced"},
    {TellKind::tested, "tested"},
    {TellKind::cleaned, "cleaned"},
    {TellKind::stocked, "stocked"},
});

constexpr auto of_instrument = Subject::instrument;
constexpr auto of_actuator = Subject::actuator;
constexpr auto of_supply = Subject::supply;

struct WhyWord {
  Why value;
  std::string_view word;
  Subject subject = Subject::nothing;
};
constexpr auto why_words = std::to_array<WhyWord>({
    {Why::nothing, "nothing"},
    {Why::never_seen, "never_seen"},
    {Why::not_a_reading, "not_a_reading"},
    {Why::outside_gross_range, "outside_gross_range"},
    {Why::outside_plausible_range, "outside_plausible_range"},
    {Why::changes_too_fast, "changes_too_fast"},
    {Why::stale, "stale"},
    {Why::said_unavailable, "said_unavailable"},
    {Why::retained_only, "retained_only"},
    {Why::awaiting_after_link, "awaiting_after_link"},
    {Why::failure_value, "failure_value"},
    {Why::flat_line, "flat_line", of_instrument},
    {Why::twins_disagree, "twins_disagree", of_instrument},
    {Why::below_the_float, "below_the_float", of_instrument},
    {Why::level_against_flow, "level_against_flow", of_instrument},
    {Why::flow_against_level, "flow_against_level", of_instrument},
    {Why::flows_unbalanced, "flows_unbalanced", of_instrument},
    {Why::power_without_flow, "power_without_flow", of_instrument},
    {Why::wet, "wet", of_instrument},
    {Why::flow_when_off, "flow_when_off", of_instrument},
    {Why::sensor_lost, "sensor_lost", of_instrument},
    {Why::high_high_wet, "high_high_wet", of_instrument},
    {Why::high_high_lost, "high_high_lost", of_instrument},
    {Why::level_flat, "level_flat"},
    {Why::level_unusable, "level_unusable", of_instrument},
    {Why::fill_overlong, "fill_overlong"},
    {Why::level_rises_after_off, "level_rises_after_off"},
    {Why::runs_after_off, "runs_after_off", of_actuator},
    {Why::product_above_zero, "product_above_zero"},
    {Why::product_membrane, "product_membrane"},
    {Why::product_resin, "product_resin"},
    {Why::off_not_obeyed, "off_not_obeyed", of_actuator},
    {Why::on_not_obeyed, "on_not_obeyed", of_actuator},
    {Why::no_power, "no_power", of_actuator},
    {Why::pressure_low, "pressure_low", of_instrument},
    {Why::starts_too_often, "starts_too_often", of_actuator},
    {Why::level_below, "level_below"},
    {Why::water_leaves, "water_leaves"},
    {Why::nothing_comes, "nothing_comes"},
    {Why::little_comes, "little_comes"},
    {Why::drawn_unusual, "drawn_unusual"},
    {Why::too_warm, "too_warm", of_instrument},
    {Why::rejection_low, "rejection_low"},
    {Why::resin_ends_soon, "resin_ends_soon"},
    {Why::resin_nearly_used, "resin_nearly_used"},
    {Why::feed_changed, "feed_changed"},
    {Why::water_old, "water_old"},
    {Why::cleaning_due, "cleaning_due"},
    {Why::stock_below, "stock_below", of_supply},
    {Why::link_down, "link_down"},
    {Why::stopped_without_notice, "stopped_without_notice"},
    {Why::command_undelivered, "command_undelivered", of_actuator},
    {Why::not_recorded, "not_recorded"},
    {Why::doubtful_for_long, "doubtful_for_long", of_instrument},
    {Why::records_not_read, "records_not_read"},
    {Why::below_start, "below_start"},
    {Why::asked_to_start, "asked_to_start"},
    {Why::in_hours, "in_hours", of_instrument},
    {Why::reached_stop, "reached_stop"},
    {Why::float_full, "float_full", of_instrument},
    {Why::full_by_float, "full_by_float", of_actuator},
    {Why::time_is_up, "time_is_up"},
    {Why::asked_to_stop, "asked_to_stop"},
    {Why::no_demand, "no_demand"},
    {Why::outside_hours, "outside_hours"},
    {Why::latched, "latched"},
    {Why::leak_not_seen, "leak_not_seen", of_instrument},
    {Why::no_leak_sensor, "no_leak_sensor"},
    {Why::level_not_good, "level_not_good", of_instrument},
    {Why::level_at_stop, "level_at_stop"},
    {Why::lease_unsupervised, "lease_unsupervised", of_actuator},
    {Why::resting, "resting", of_actuator},
    {Why::settling_after_start, "settling_after_start"},
    {Why::settling_after_loss, "settling_after_loss"},
    {Why::run_longest, "run_longest", of_actuator},
    {Why::day_longest, "day_longest", of_actuator},
    {Why::frost, "frost", of_instrument},
    {Why::effects_overflowed, "effects_overflowed"},
    {Why::switched_by_hand, "switched_by_hand", of_actuator},
    {Why::excluded, "excluded", of_actuator},
    {Why::mixing_vat_at_stop, "mixing_vat_at_stop"},
    {Why::mixing_level_below, "mixing_level_below"},
    {Why::no_mixing_level, "no_mixing_level"},
    {Why::done, "done"},
    {Why::reset_done, "reset_done"},
    {Why::armed, "armed"},
    {Why::no_such_thing, "no_such_thing"},
    {Why::not_latched, "not_latched"},
    {Why::still_wet_or_unknown, "still_wet_or_unknown", of_instrument},
    {Why::cause_still_stands, "cause_still_stands"},
    {Why::wrong_token, "wrong_token"},
    {Why::armed_too_long_ago, "armed_too_long_ago"},
    {Why::too_many_tries, "too_many_tries"},
    {Why::old_occurrence, "old_occurrence"},
    {Why::nothing_to_acknowledge, "nothing_to_acknowledge"},
    {Why::may_not_be_shelved, "may_not_be_shelved"},
    {Why::shelved_too_long, "shelved_too_long"},
    {Why::already_shelved, "already_shelved"},
    {Why::not_shelved, "not_shelved"},
    {Why::held_by_latch, "held_by_latch"},
    {Why::needs_minutes, "needs_minutes"},
    {Why::nothing_to_drive, "nothing_to_drive"},
    {Why::goes_with_make_water, "goes_with_make_water", of_actuator},
    {Why::bypassed, "bypassed"},
    {Why::sensor_test_due, "sensor_test_due", of_instrument},
    {Why::lease_test_due, "lease_test_due", of_actuator},
    {Why::lease_proved, "lease_proved", of_actuator},
    {Why::lease_not_kept, "lease_not_kept", of_actuator},
    {Why::bypass_armed, "bypass_armed"},
    {Why::may_not_be_bypassed, "may_not_be_bypassed"},
    {Why::not_bypassed, "not_bypassed"},
    {Why::too_many_bypasses, "too_many_bypasses"},
    {Why::lease_tried, "lease_tried", of_actuator},
    {Why::no_feedback, "no_feedback", of_actuator},
    {Why::not_at_rest, "not_at_rest", of_actuator},
    {Why::not_reached_lately, "not_reached_lately", of_instrument},
    {Why::tested_and_not_off, "tested_and_not_off", of_instrument},
    {Why::tested, "tested", of_instrument},
    {Why::value_out_of_range, "value_out_of_range"},
});

// The row of that enumerator; an empty word if there is none.
template <class Table, class Enum>
constexpr auto row(const Table& table, Enum value) {
  for (const auto& candidate : table) {
    if (candidate.value == value) return candidate;
  }
  return typename Table::value_type{value, {}};
}

}  // namespace

std::string_view name(Quality value) { return row(words<Quality>, value).word; }
std::string_view name(DeviceStatus value) { return row(words<DeviceStatus>, value).word; }
std::string_view name(state::Suppression value) {
  return row(words<state::Suppression>, value).word;
}
std::string_view name(Announced value) { return row(words<Announced>, value).word; }
std::string_view name(state::Demand value) { return row(words<state::Demand>, value).word; }
std::string_view name(state::LeasePhase value) { return row(words<state::LeasePhase>, value).word; }
std::string_view name(Arrival value) { return row(words<Arrival>, value).word; }
std::string_view name(AskKind value) { return row(words<AskKind>, value).word; }
std::string_view name(TellKind value) { return row(words<TellKind>, value).word; }
std::string_view name(Why why) { return row(why_words, why).word; }
std::string_view name(room::RuleId id) {
  return static_cast<std::size_t>(id) < room::rule_count ? rules::rule(id).name
                                                         : std::string_view{};
}

Subject subject_of(Why why) { return row(why_words, why).subject; }

}  // namespace tidewright::store
