// Each reason's sentence. The pieces in braces are
//   it          the instrument, actuator or supply that the reason is about
//   unit        its unit
//   a b c       its numbers as they are
//   a_s a_m a_h the number a, which is in seconds, minutes or hours, as a time in words; b so
//   a_l         the number a, in seconds, which is growing: told so that it changes once a minute
//   vat rule    the vat's name; the name of the rule whose number is a
//   cause       the cause of the matrix whose number is a
#include <fmt/args.h>
#include <fmt/format.h>

#include "core/interlock/matrix.hpp"
#include "core/report/phrases.hpp"
#include "core/report/report.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::report {
namespace {

enum class About : std::uint8_t { room, instrument, actuator, supply };

struct Row {
  Why why;
  About about;
  std::string_view text;
};

constexpr Row rows[] = {
    {Why::nothing, About::room, "as it should be"},

    {Why::never_seen, About::instrument, "{it}: no reading for {a_l}"},
    {Why::not_a_reading, About::instrument, "{it}: what it sends cannot be read"},
    {Why::outside_gross_range, About::instrument,
     "{it}: readings outside what it can measure ({b} to {c} {unit})"},
    {Why::outside_plausible_range, About::instrument,
     "{it}: {a} {unit} is hardly credible ({b} to {c} {unit} would be)"},
    {Why::changes_too_fast, About::instrument, "{it}: the reading leaps"},
    {Why::stale, About::instrument, "{it}: silent for {a_l}, at most {b_s} is normal"},
    {Why::said_unavailable, About::instrument, "{it}: says that it is offline"},
    {Why::retained_only, About::instrument, "{it}: only an old reading of unknown age"},
    {Why::awaiting_after_link, About::instrument, "{it}: no reading yet since the line came up"},

    {Why::failure_value, About::instrument,
     "{it}: says what such sensors say before they have measured anything"},
    {Why::flat_line, About::instrument,
     "{it}: has shown the same for {a_h} of running, at most {b_h} is normal"},
    {Why::twins_disagree, About::instrument,
     "{it}: says {a} {unit}, and its twin {b} {unit}; one of them is wrong"},
    {Why::below_the_float, About::instrument,
     "{it}: says {a} L, although the float switch above STOP is lifted"},
    {Why::level_against_flow, About::instrument,
     "{it}: has risen by {a} L while the product flow meter counted {b} L"},
    {Why::flow_against_level, About::instrument,
     "{it}: has counted {a} L while the vat rose by {b} L"},
    {Why::flows_unbalanced, About::instrument,
     "{it}: {a} L of feed came and {b} L of product and concentrate went; water is lost, or one of "
     "the meters is wrong"},
    {Why::power_without_flow, About::instrument,
     "{it}: the pump draws {a} W and {b} L/h come out; something is closed, or one of the two is "
     "wrong"},

    {Why::wet, About::instrument, "{it} says wet"},
    {Why::flow_when_off, About::instrument,
     "{it} has counted {a} L although everything has been off for {b_m}"},
    {Why::sensor_lost, About::instrument,
     "{it} has been silent for {a_l}: a leak would not be seen"},
    {Why::high_high_wet, About::instrument, "{it} is lifted: the {vat} is almost running over"},
    {Why::high_high_lost, About::instrument, "{it} is silent: an overflow would not be seen"},
    {Why::level_flat, About::room,
     "the pump has run for {a_m} and the level is still {b} L; even the slowest flow would have "
     "lifted it by now"},
    {Why::level_unusable, About::instrument, "{it} has given no believable level for {a_l}"},
    {Why::fill_overlong, About::room,
     "the fill has run for {a_h} and brought {c} L; it should have been over long before"},
    {Why::level_rises_after_off, About::room,
     "the level of the {vat} has risen by {a} L although everything is off for {b_m}"},
    {Why::runs_after_off, About::actuator, "{it} was sent OFF {a_l} ago and still draws power"},
    {Why::product_above_zero, About::room,
     "the product water shows {a} ppm over {c} L (limit {b} ppm); whether the resin or the "
     "membrane is to blame is not known"},
    {Why::product_membrane, About::room,
     "the product water shows {a} ppm (limit {b} ppm); the membrane holds back only {c} %, so it "
     "is the first suspect"},
    {Why::product_resin, About::room,
     "the product water shows {a} ppm (limit {b} ppm); the membrane holds back {c} %, so the resin "
     "is spent"},
    {Why::off_not_obeyed, About::actuator, "{it} was sent OFF {a_l} ago and still says ON"},
    {Why::on_not_obeyed, About::actuator, "{it} does not switch on, twice tried"},
    {Why::no_power, About::actuator,
     "{it} is on and draws {a} W (under {b} W it does not work), with {c} L in the vat"},
    {Why::pressure_low, About::instrument,
     "{it} shows {a} bar while the pump runs, under {b} bar it runs dry"},
    {Why::starts_too_often, About::actuator,
     "{it} started {a} times in an hour, at most {b} is good"},
    {Why::level_below, About::room, "the {vat} holds {a} L, under {b} L"},
    {Why::water_leaves, About::room,
     "water leaves the {vat} at about {a} L/h while nothing runs, {b} L so far ({c} L/h is usual): "
     "a hidden leak, or the tank's top-off takes more than it did; the level alone cannot tell"},
    {Why::nothing_comes, About::room,
     "the pump runs and for {a_m} next to nothing has come into the {vat}, {b} L are missing of "
     "the usual {c} L/h: the float valve has stuck closed, or the feed is shut; water that leaves "
     "as fast as it comes would look the same"},
    {Why::little_comes, About::room,
     "only {a} L/h come into the {vat}, {b} L/h are usual for this purifier and temperature, {c} L "
     "are missing: a clogged filter or low pressure, or water that is taken or lost meanwhile"},
    {Why::drawn_unusual, About::room,
     "{a} L left the {vat} within {b_m}, up to {c} L is usual: the tank's top-off has stuck open, "
     "a hose was left running, or somebody drew much"},
    {Why::too_warm, About::instrument, "{it} shows {a} °C, over {b} °C"},
    {Why::rejection_low, About::room,
     "the membrane holds back only {a} % of the feed's solids (limit {b} %): {c} ppm come through"},
    {Why::resin_ends_soon, About::room,
     "the first resin canister lasts for about {a} L more, at this pace {b} days"},
    {Why::resin_nearly_used, About::room,
     "the first resin canister is {b} % used and lasts for about {a} L more"},
    {Why::feed_changed, About::room, "the feed water shows {a} ppm lately; usual is {b} ppm"},
    {Why::water_old, About::room,
     "the water in the {vat} is {a_h} old in the mean, at most {b_h} is wanted"},
    {Why::cleaning_due, About::room,
     "the {vat} was cleaned {a_h} ago or longer, every {b_h} is wanted"},
    {Why::stock_below, About::supply, "only {a} {unit} of {it} are left; order below {b} {unit}"},
    {Why::link_down, About::room, "no line to the broker for {a_l}"},
    {Why::stopped_without_notice, About::room,
     "the daemon had stopped without notice; its last record was {a_s} old"},
    {Why::command_undelivered, About::actuator,
     "the broker says that a command to {it} reached nobody or was refused (code {a})"},
    {Why::not_recorded, About::room, "the disk refused the last record"},
    {Why::doubtful_for_long, About::instrument, "{it} has given nothing to rely on for {a_h}"},
    {Why::records_not_read, About::room,
     "the records of the run before could not be read, so a trip is assumed"},

    {Why::bypassed, About::room, "bypassed for {b_m}: {cause}"},
    {Why::sensor_test_due, About::instrument, "{it} was not tried for {a} days"},
    {Why::lease_test_due, About::actuator,
     "whether {it} goes off by itself was not tried for {a} days"},

    {Why::below_start, About::room, "the {vat} holds {a} L, below start at {b} L"},
    {Why::asked_to_start, About::room, "a start was asked for"},
    {Why::in_hours, About::room, "it is the time of day for filling and the float is not full"},
    {Why::reached_stop, About::room, "the {vat} holds {a} L, at or above stop at {b} L"},
    {Why::float_full, About::instrument, "{it} says full"},
    {Why::full_by_float, About::room,
     "the pump draws only {a} W at {b} L: the float valve has closed, the {vat} is full"},
    {Why::time_is_up, About::room, "the asked {a_m} are over"},
    {Why::asked_to_stop, About::room, "a stop was asked for"},
    {Why::no_demand, About::room, "no water is wanted"},
    {Why::outside_hours, About::room, "water is wanted, but not at this time of day"},

    {Why::latched, About::room, "held off by the alarm {rule} until a person resets it"},
    {Why::leak_not_seen, About::instrument, "{it} has not reported yet"},
    {Why::no_leak_sensor, About::room, "no leak sensor: only attended runs"},
    {Why::level_not_good, About::instrument, "{it}: the level is not to be believed"},
    {Why::level_at_stop, About::room, "the {vat} holds {a} L, stop is at {b} L"},
    {Why::lease_unsupervised, About::actuator,
     "nobody would switch off {it} if the daemon fell silent: only attended runs"},
    {Why::resting, About::actuator, "{it} rests for {a_s}"},
    {Why::settling_after_start, About::room, "waiting {a_s} after a start without notice"},
    {Why::settling_after_loss, About::room,
     "a lost signal is back; waiting until it has stayed for {a_s}"},
    {Why::run_longest, About::actuator, "{it} has run {a_h}, at most {b_h} is allowed"},
    {Why::day_longest, About::actuator, "{it} has run {a_h} today, at most {b_h} is allowed"},
    {Why::frost, About::instrument, "{it} shows {a} °C; under {b} °C nothing starts"},
    {Why::effects_overflowed, About::room, "too much at once: everything was switched off"},
    {Why::switched_by_hand, About::actuator, "{it} was switched by hand"},
    {Why::excluded, About::actuator, "it must not run beside {it}"},
    {Why::lease_tried, About::actuator,
     "whether {it} goes off by itself is being tried, for {a_m} at most"},
    {Why::lease_proved, About::actuator, "{it} went off by itself when that was tried"},
    {Why::lease_not_kept, About::actuator,
     "{it} did not keep its lease when that was tried, so it runs only while somebody is there"},
    {Why::mixing_vat_at_stop, About::room, "the mixing vat holds {a} L, stop is at {b} L"},
    {Why::mixing_level_below, About::room, "the mixing vat holds {a} L, under {b} L"},
    {Why::no_mixing_level, About::room, "there is no gauge to show that the heater is covered"},

    {Why::done, About::room, "done"},
    {Why::reset_done, About::room, "reset; nothing starts by itself, `start` begins the fill anew"},
    {Why::armed, About::room, "ready to reset: confirm within 30 s with the token {a}"},
    {Why::no_such_thing, About::room, "there is no such thing here"},
    {Why::not_latched, About::room, "nothing is held, so there is nothing to reset"},
    {Why::still_wet_or_unknown, About::instrument, "{it} must report dry twice before the reset"},
    {Why::cause_still_stands, About::room, "the cause still stands"},
    {Why::wrong_token, About::room, "this is not the token of the answer"},
    {Why::armed_too_long_ago, About::room, "that was asked for more than {a_s} ago: ask again"},
    {Why::too_many_tries, About::room, "too many tries: wait {a_s}"},
    {Why::old_occurrence, About::room, "that was an older occurrence; the present one is {a}"},
    {Why::nothing_to_acknowledge, About::room, "there is nothing to acknowledge"},
    {Why::may_not_be_shelved, About::room, "this alarm may not be shelved"},
    {Why::shelved_too_long, About::room, "at most {a_h} may be asked for"},
    {Why::already_shelved, About::room, "it is shelved or suppressed already"},
    {Why::not_shelved, About::room, "it is not shelved"},
    {Why::held_by_latch, About::room, "the alarm {rule} holds everything off: reset it first"},
    {Why::needs_minutes, About::room, "say for how many minutes"},
    {Why::nothing_to_drive, About::room, "nothing here is switched by the daemon"},
    {Why::goes_with_make_water, About::actuator,
     "{it} goes with the fill: start or stop make_water instead"},
    {Why::bypass_armed, About::room, "ready to bypass: confirm within 30 s with the token {a}"},
    {Why::may_not_be_bypassed, About::room, "this cause may not be bypassed"},
    {Why::not_bypassed, About::room, "that is not bypassed"},
    {Why::too_many_bypasses, About::room, "at most {a} causes may be bypassed at once"},
    {Why::no_feedback, About::actuator, "{it} gives no feedback, so nobody could tell"},
    {Why::not_at_rest, About::actuator, "{it} runs or is wanted: try it when it is at rest"},
    {Why::not_reached_lately, About::instrument,
     "{it} was not reached within the last hour while the pump ran: try it first, then tell"},
    {Why::tested_and_not_off, About::instrument,
     "{it} was reached, but not everything was off in time: that test has failed"},
    {Why::tested, About::instrument, "{it} was tried: everything was off within {a} s"},
    {Why::value_out_of_range, About::room, "{a} is out of range ({b} to {c})"},
};

std::string_view text_of(Why why) {
  for (const Row& row : rows) {
    if (row.why == why) return row.text;
  }
  return {};
}

About about(Why why) {
  for (const Row& row : rows) {
    if (row.why == why) return row.about;
  }
  return About::room;
}

std::string subject(const room::Room& room, const Reason& reason) {
  switch (about(reason.why)) {
    case About::instrument:
      return instrument_words(room, reason.subject);
    case About::actuator:
      return actuator_words(room, reason.subject);
    case About::supply:
      return supply_words(room, reason.subject);
    case About::room:
      break;
  }
  return "the room";
}

std::string_view unit_of(const room::Room& room, const Reason& reason) {
  if (about(reason.why) == About::supply) {
    if (reason.subject >= room.supplies.size()) return "";
    return room.supplies[reason.subject].unit;
  }
  if (reason.subject >= room.instruments.size()) return "";
  return unit(room.instruments[reason.subject].quantity);
}

std::string_view rule_of(const Reason& reason) {
  const auto index = static_cast<std::size_t>(reason.numbers[0]);
  return index < room::rule_count ? rules::catalogue[index]->name : "?";
}

std::string_view cause_of(const Reason& reason) {
  const auto index = static_cast<std::size_t>(reason.numbers[0]);
  return index < room::cause_count ? interlock::matrix()[index].cause : "?";
}

Duration spanning(float amount, Duration of_unit) {
  return Duration{static_cast<Duration::rep>(static_cast<double>(amount) *
                                             static_cast<double>(of_unit.count()))};
}

}  // namespace

std::string words(const room::Room& room, const Reason& reason) {
  using namespace std::chrono_literals;
  const auto [a, b, c] = reason.numbers;
  fmt::dynamic_format_arg_store<fmt::format_context> pieces;
  const auto add = [&](const char* name, const std::string& text) {
    pieces.push_back(fmt::arg(name, text));
  };
  add("it", subject(room, reason));
  add("unit", std::string(unit_of(room, reason)));
  add("vat", vat_words(room));
  add("rule", std::string(rule_of(reason)));
  add("cause", std::string(cause_of(reason)));
  add("a", number(static_cast<double>(a)));
  add("b", number(static_cast<double>(b)));
  add("c", number(static_cast<double>(c)));
  add("a_s", lasting(spanning(a, 1s)));
  add("a_l", growing(spanning(a, 1s)));
  add("b_s", lasting(spanning(b, 1s)));
  add("a_m", lasting(spanning(a, 1min)));
  add("b_m", lasting(spanning(b, 1min)));
  add("a_h", lasting(spanning(a, 1h)));
  add("b_h", lasting(spanning(b, 1h)));
  return fmt::vformat(text_of(reason.why), pieces);
}

}  // namespace tidewright::report
