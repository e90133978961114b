// Why something was decided: a code and its numbers, made where the decision is made.
// report/words turns it into a sentence; nothing in step() ever holds text.
#pragma once

#include <array>
#include <cstdint>

namespace tidewright {

// Each code's numbers (a, b, c) and its sentence stand beside it in report/words.cpp.
enum class Why : std::uint8_t {
  nothing,

  // signals: why a value is not good
  never_seen,               // a: seconds waited
  not_a_reading,            // the payload said so or could not be read
  outside_gross_range,      // a: value  b: low  c: high
  outside_plausible_range,  // a: value  b: low  c: high
  changes_too_fast,         // a: change per second  b: limit
  stale,                    // a: seconds since the last reading  b: seconds allowed
  said_unavailable,         // the instrument's own availability topic
  retained_only,            // of unknown age
  awaiting_after_link,      // not seen since the broker came back
  failure_value,            // what such a sensor says when it has measured nothing
  flat_line,                // a: hours of no change  b: hours allowed
  twins_disagree,           // a: value  b: what its twin says
  below_the_float,          // a: litres, while a float switch above them is lifted
  level_against_flow,       // a: litres by the gauge  b: litres by the meter
  flow_against_level,       // a: litres by the meter  b: litres by the gauge
  flows_unbalanced,         // a: litres of feed  b: litres of product and concentrate
  power_without_flow,       // a: watts  b: litres per hour

  // rules
  wet,                     // subject: instrument
  flow_when_off,           // subject: instrument  a: litres  b: minutes since everything is off
  sensor_lost,             // subject: instrument  a: seconds since the last good reading
  high_high_wet,           // subject: instrument
  high_high_lost,          // subject: instrument
  level_flat,              // a: minutes flat  b: litres
  level_unusable,          // subject: instrument  a: seconds since the last good reading
  fill_overlong,           // a: hours run  b: hours allowed  c: litres gained
  level_rises_after_off,   // a: litres risen  b: minutes since OFF
  runs_after_off,          // subject: actuator  a: seconds since OFF
  product_above_zero,      // a: median ppm  b: limit ppm  c: litres judged
  product_membrane,        // the same, and the permeate shows the membrane: c: rejection %
  product_resin,           // the same, and the permeate clears the membrane: c: rejection %
  off_not_obeyed,          // subject: actuator  a: seconds since OFF
  on_not_obeyed,           // subject: actuator  a: seconds since ON
  no_power,                // subject: actuator  a: watts  b: idle watts  c: litres in the vat
  pressure_low,            // subject: instrument  a: bars  b: limit
  starts_too_often,        // subject: actuator  a: starts in the last hour  b: limit
  level_below,             // a: litres  b: limit  c: days of top-off left
  water_leaves,            // a: L/h  b: litres gone  c: L/h usual
  nothing_comes,           // a: minutes  b: litres missing  c: L/h usual
  little_comes,            // a: L/h  b: L/h usual  c: litres missing
  drawn_unusual,           // a: litres  b: minutes  c: litres that are still usual
  too_warm,                // subject: instrument  a: degrees  b: limit
  rejection_low,           // a: rejection %  b: limit %  c: permeate ppm
  resin_ends_soon,         // a: litres left  b: days left
  resin_nearly_used,       // a: litres left  b: share used %
  feed_changed,            // a: ppm lately  b: ppm usually  c: ppm at the meter now
  water_old,               // a: mean age in hours  b: limit in hours
  cleaning_due,            // a: hours since the last cleaning  b: limit in hours
  stock_below,             // subject: supply  a: amount  b: limit
  link_down,               // a: seconds
  stopped_without_notice,  // a: seconds since the last record
  command_undelivered,     // subject: actuator  a: reason code of the broker
  not_recorded,            // the disk refused a write
  bypassed,                // a: cause  b: minutes, in all
  sensor_test_due,         // subject: instrument  a: days since the last test, or the first start
  lease_test_due,          // subject: actuator  a: the same
  doubtful_for_long,       // subject: instrument  a: hours
  records_not_read,        // of the run before

  // procedure
  below_start,     // a: litres  b: START litres
  asked_to_start,  // a: minutes
  in_hours,        // the hours of the day allow it and the float is not full
  reached_stop,    // a: litres  b: STOP litres  c: minutes run
  float_full,      // subject: instrument
  full_by_float,   // a: watts  b: litres
  time_is_up,      // a: minutes
  asked_to_stop,
  no_demand,
  outside_hours,  // it would begin, but not in these hours of the day

  // interlock: what holds an actuator back
  latched,        // a: rule that holds the latch
  leak_not_seen,  // subject: instrument
  no_leak_sensor,
  level_not_good,        // subject: instrument
  level_at_stop,         // a: litres  b: STOP litres
  lease_unsupervised,    // subject: actuator
  resting,               // a: seconds until it may start again
  settling_after_start,  // a: seconds left of the wait after an unclean start
  settling_after_loss,   // a: seconds that a lost signal must be back for
  run_longest,           // a: hours run  b: hours allowed
  day_longest,           // a: hours run today  b: hours allowed
  frost,                 // subject: instrument  a: degrees  b: limit
  effects_overflowed,
  switched_by_hand,    // subject: actuator
  excluded,            // subject: actuator that it must not run beside
  lease_tried,         // subject: actuator  a: minutes that it takes at most
  lease_proved,        // subject: actuator
  lease_not_kept,      // subject: actuator
  mixing_vat_at_stop,  // a: litres  b: stop litres
  mixing_level_below,  // a: litres  b: limit
  no_mixing_level,     // a heater without a gauge

  // answers to a person
  done,
  reset_done,  // the latch is off; `start` begins the fill anew
  armed,       // a: token to confirm with
  no_such_thing,
  not_latched,
  still_wet_or_unknown,  // subject: instrument; needs two live good readings
  cause_still_stands,
  wrong_token,
  armed_too_long_ago,  // a: seconds allowed
  too_many_tries,      // a: seconds to wait
  old_occurrence,      // a: the current occurrence
  nothing_to_acknowledge,
  may_not_be_shelved,
  shelved_too_long,  // a: hours allowed
  already_shelved,
  not_shelved,
  held_by_latch,  // a: rule
  needs_minutes,
  nothing_to_drive,
  goes_with_make_water,  // subject: actuator
  bypass_armed,          // a: token to confirm with
  may_not_be_bypassed,
  not_bypassed,
  too_many_bypasses,   // a: how many are allowed at once
  no_feedback,         // subject: actuator
  not_at_rest,         // subject: actuator
  not_reached_lately,  // subject: instrument
  tested_and_not_off,  // subject: instrument
  tested,              // subject: instrument  a: seconds from demand to OFF
  value_out_of_range,  // a: value  b: low  c: high
};

inline constexpr std::uint8_t no_subject = 255;

struct Reason {
  Why why = Why::nothing;
  std::uint8_t subject =
      no_subject;                  // index of an instrument, actuator or supply, as the code says
  std::array<float, 3> numbers{};  // a, b, c

  friend bool operator==(const Reason&, const Reason&) = default;
};

}  // namespace tidewright
