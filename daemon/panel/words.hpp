// Every word that the panel itself says, in each of its languages: one row each in words.cpp.
// What core says (reasons, alarms) stays as core says it, and is marked as English.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "config/household.hpp"

namespace tidewright::panel {

enum class Word : std::uint8_t {
  language_code,
  decimal_sign,
  skip,
  now_page,
  why_page,
  history_page,
  offline,
  as_of,
  tomorrow,
  yesterday,
  days,
  nothing_known,
  unknown,
  // the sentence
  alarm_since,
  ready,
  ready_by_float,
  not_yet_about,
  not_yet,
  not_yet_float,
  not_pure,
  level_not_known,
  starting,
  first_reading,
  reported_so_far,
  all_dry,
  floor_not_known,
  nothing_watched,
  pure,
  purity_not_known,
  filling_until,
  filling,
  paused,
  held,
  at_mark,
  resting,
  did,
  do_now,
  by_when,
  // the vessel
  vessel,
  holds_of,
  level_unknown,
  mark_start,
  mark_enough,
  mark_stop,
  in_an_hour,
  // the path of the water
  path,
  feed,
  membrane,
  first_resin,
  second_resin,
  concentrate,
  vat,
  held_back,
  good,
  look_here,
  not_measured,
  litres_left,
  days_left,
  // what runs
  running,
  runs,
  is_off,
  answers_not,
  told_on,
  told_off,
  by_hand,
  nothing_switched,
  // what is due
  due,
  nothing_due,
  rotate,
  clean,
  order,
  test,
  in_days,
  today,
  since_days,
  // why
  why_title,
  why_empty,
  started,
  goes_on,
  goes_off,
  alarm_raised,
  alarm_over,
  // history
  history_title,
  hours_24,
  days_7,
  days_14,
  history_empty,
  history_failed,
  lowest_highest,
  told,
  no_curves,
};

// With {a} and {b} still in it, where it has them.
std::string_view word(config::Language, Word);
// With them filled in.
std::string said(config::Language, Word, const std::string& a, const std::string& b = {});

}  // namespace tidewright::panel
