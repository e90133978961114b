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
constexpr std::array words<Quality>{
    Word{Quality::bad, "bad"},
    Word{Quality::uncertain, "uncertain"},
    Word{Quality::good, "good"},
};

template <>
constexpr std::array words<DeviceStatus>{
    Word{DeviceStatus::normal, "normal"},
    Word{DeviceStatus::failure, "failure"},
    Word{DeviceStatus::check_function, "check_function"},
    Word{DeviceStatus::out_of_specification, "out_of_specification"},
    Word{DeviceStatus::maintenance_required, "maintenance_required"},
};

template <>
constexpr std::array words<state::Suppression>{
    Word{state::Suppression::none, "none"},
    Word{state::Suppression::shelved, "shelved"},
    Word{state::Suppression::by_design, "by_design"},
    Word{state::Suppression::out_of_service, "out_of_service"},
};

template <>
constexpr std::array words<state::Demand>{
    Word{state::Demand::none, "none"},         Word{state::Demand::halted, "halted"},
    Word{state::Demand::standing, "standing"}, Word{state::Demand::asked, "asked"},
    Word{state::Demand::attended, "attended"},
};

template <>
constexpr std::array words<Arrival>{
    Word{Arrival::live, "live"},
    Word{Arrival::retained, "retained"},
    Word{Arrival::dated, "dated"},
};

template <>
constexpr std::array words<AskKind>{
    Word{AskKind::acknowledge, "acknowledge"},
    Word{AskKind::shelve, "shelve"},
    Word{AskKind::unshelve, "unshelve"},
    Word{AskKind::reset, "reset"},
    Word{AskKind::confirm, "confirm"},
    Word{AskKind::start, "start"},
    Word{AskKind::stop, "stop"},
    Word{AskKind::test, "test"},
};

template <>
constexpr std::array words<TellKind>{
    Word{TellKind::measured, "measured"},
    Word{TellKind::rotated, "rotated"},
    Word{TellKind::replaced, "replaced"},
    Word{TellKind::tested, "tested"},
};

constexpr auto of_instrument = Subject::instrument;
constexpr auto of_actuator = Subject::actuator;

struct WhyWord {
  Why value;
  std::string_view word;
  Subject subject = Subject::nothing;
};
constexpr std::array why_words{
    WhyWord{Why::nothing, "nothing"},
    WhyWord{Why::never_seen, "never_seen"},
    WhyWord{Why::not_a_reading, "not_a_reading"},
    WhyWord{Why::outside_gross_range, "outside_gross_range"},
    WhyWord{Why::outside_plausible_range, "outside_plausible_range"},
    WhyWord{Why::changes_too_fast, "changes_too_fast"},
    WhyWord{Why::stale, "stale"},
    WhyWord{Why::said_unavailable, "said_unavailable"},
    WhyWord{Why::retained_only, "retained_only"},
    WhyWord{Why::awaiting_after_link, "awaiting_after_link"},
    WhyWord{Why::wet, "wet", of_instrument},
    WhyWord{Why::sensor_lost, "sensor_lost", of_instrument},
    WhyWord{Why::high_high_wet, "high_high_wet", of_instrument},
    WhyWord{Why::high_high_lost, "high_high_lost", of_instrument},
    WhyWord{Why::level_flat, "level_flat"},
    WhyWord{Why::level_unusable, "level_unusable", of_instrument},
    WhyWord{Why::fill_overlong, "fill_overlong"},
    WhyWord{Why::level_rises_after_off, "level_rises_after_off"},
    WhyWord{Why::runs_after_off, "runs_after_off", of_actuator},
    WhyWord{Why::product_above_zero, "product_above_zero"},
    WhyWord{Why::product_membrane, "product_membrane"},
    WhyWord{Why::product_resin, "product_resin"},
    WhyWord{Why::off_not_obeyed, "off_not_obeyed", of_actuator},
    WhyWord{Why::on_not_obeyed, "on_not_obeyed", of_actuator},
    WhyWord{Why::no_power, "no_power", of_actuator},
    WhyWord{Why::starts_too_often, "starts_too_often", of_actuator},
    WhyWord{Why::level_below, "level_below"},
    WhyWord{Why::link_down, "link_down"},
    WhyWord{Why::stopped_without_notice, "stopped_without_notice"},
    WhyWord{Why::command_undelivered, "command_undelivered", of_actuator},
    WhyWord{Why::not_recorded, "not_recorded"},
    WhyWord{Why::below_start, "below_start"},
    WhyWord{Why::asked_to_start, "asked_to_start"},
    WhyWord{Why::in_hours, "in_hours"},
    WhyWord{Why::reached_stop, "reached_stop"},
    WhyWord{Why::float_full, "float_full", of_instrument},
    WhyWord{Why::full_by_float, "full_by_float"},
    WhyWord{Why::delivered, "delivered"},
    WhyWord{Why::time_is_up, "time_is_up"},
    WhyWord{Why::asked_to_stop, "asked_to_stop"},
    WhyWord{Why::above_start, "above_start"},
    WhyWord{Why::no_demand, "no_demand"},
    WhyWord{Why::latched, "latched"},
    WhyWord{Why::leak_not_seen, "leak_not_seen", of_instrument},
    WhyWord{Why::no_leak_sensor, "no_leak_sensor"},
    WhyWord{Why::level_not_good, "level_not_good", of_instrument},
    WhyWord{Why::level_at_stop, "level_at_stop"},
    WhyWord{Why::lease_unsupervised, "lease_unsupervised", of_actuator},
    WhyWord{Why::resting, "resting"},
    WhyWord{Why::settling_after_start, "settling_after_start"},
    WhyWord{Why::settling_after_loss, "settling_after_loss"},
    WhyWord{Why::run_longest, "run_longest"},
    WhyWord{Why::day_longest, "day_longest"},
    WhyWord{Why::proof_overdue, "proof_overdue", of_instrument},
    WhyWord{Why::outside_hours, "outside_hours"},
    WhyWord{Why::frost, "frost"},
    WhyWord{Why::effects_overflowed, "effects_overflowed"},
    WhyWord{Why::switched_by_hand, "switched_by_hand", of_actuator},
    WhyWord{Why::upstream_cut, "upstream_cut", of_actuator},
    WhyWord{Why::done, "done"},
    WhyWord{Why::reset_done, "reset_done"},
    WhyWord{Why::armed, "armed"},
    WhyWord{Why::no_such_thing, "no_such_thing"},
    WhyWord{Why::not_latched, "not_latched"},
    WhyWord{Why::still_wet_or_unknown, "still_wet_or_unknown", of_instrument},
    WhyWord{Why::cause_still_stands, "cause_still_stands"},
    WhyWord{Why::wrong_token, "wrong_token"},
    WhyWord{Why::armed_too_long_ago, "armed_too_long_ago"},
    WhyWord{Why::too_many_tries, "too_many_tries"},
    WhyWord{Why::old_occurrence, "old_occurrence"},
    WhyWord{Why::nothing_to_acknowledge, "nothing_to_acknowledge"},
    WhyWord{Why::may_not_be_shelved, "may_not_be_shelved"},
    WhyWord{Why::shelved_too_long, "shelved_too_long"},
    WhyWord{Why::already_shelved, "already_shelved"},
    WhyWord{Why::not_shelved, "not_shelved"},
    WhyWord{Why::held_by_latch, "held_by_latch"},
    WhyWord{Why::needs_minutes, "needs_minutes"},
    WhyWord{Why::nothing_to_drive, "nothing_to_drive"},
    WhyWord{Why::value_out_of_range, "value_out_of_range"},
};

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
std::string_view name(state::Demand value) { return row(words<state::Demand>, value).word; }
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
