// What a rule is: one judgement, picture in, finding out, without memory. And its record, which a
// person can read: rationalised as ISA-18.2 / IEC 62682 ask (from memory; our words).
#pragma once

#include <cstdint>
#include <string_view>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/picture/picture.hpp"
#include "core/room/rule.hpp"

namespace tidewright::rules {

// What a rule says of this instant; `why` is filled when `on`.
struct Judgement {
  bool on = false;
  Reason why;
};

// 1 a trip happened or was impossible, water loose or about to be; 2 act within a day;
// 3 act within days.
enum class Priority : std::uint8_t { urgent = 1, soon = 2, days = 3 };

// Why the alarm exists and what a person does about it. Printed by `explain` and into the docs.
struct Record {
  std::string_view limit;        // with unit and where it comes from
  std::string_view causes;       // likely ones
  std::string_view consequence;  // if nobody acts
  std::string_view action;       // what the person does, cocks and plugs by name
  std::string_view automatic;    // what the daemon does
  std::string_view test;         // how it is proved to work
};

struct Rule {
  room::RuleId id;
  std::string_view name;   // `leak`
  std::string_view title;  // "Water on the floor"
  Judgement (*judge)(const picture::Picture&);
  Priority priority;
  Duration respond_within;
  bool may_be_shelved;
  Duration on_delay;  // defaults; the household's file may change them
  Duration off_delay;
  Duration remind_after;  // priority 1: while unacknowledged; else re-alarm; 0 = never
  Record record;
};

}  // namespace tidewright::rules
