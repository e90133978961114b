// What a rule is: one judgement, picture in, verdict out, without memory. And its record, which a
// person can read: rationalised as ISA-18.2 / IEC 62682 ask (from memory; our words).
// Each rule is one file of this folder; catalogue.cpp holds them in order.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/picture/picture.hpp"
#include "core/room/rule.hpp"

namespace tidewright::rules {

// `unknown`: the picture does not tell, so the finding stays as it was. Danger is believed at any
// quality, the end of danger only at good: a sensor that died wet does not dry a floor.
enum class Verdict : std::uint8_t { off, on, unknown };

// What a rule says of this instant.
struct Judgement {
  Verdict verdict = Verdict::off;
  Reason why;                   // when `on`
  Instant judge_again = never;  // the verdict may change by then, even if nothing else happens
};

// 1 a trip happened or was impossible, water loose or about to be; 2 act within a day;
// 3 act within days.
enum class Priority : std::uint8_t { urgent = 1, soon = 2, days = 3 };

// Whether the trip of this rule holds until a person resets it.
enum class Latching : std::uint8_t { never, at_once, on_repeat };

// Why the alarm exists and what a person does about it. Printed by `explain` and into the docs.
struct Record {
  std::string_view source = {};    // what it is judged from
  std::string_view limit;          // with unit
  std::string_view origin = {};    // where the limit comes from
  std::string_view deadband = {};  // between coming and going; empty: none, the off-delay alone
  std::string_view causes;         // likely ones
  std::string_view consequence;    // if nobody acts
  std::string_view action;         // what the person does
  std::string_view automatic;      // what the daemon does
  std::string_view test;           // how it is proved to work
};

struct Rule {
  room::RuleId id{};
  std::string_view name;   // `leak`
  std::string_view title;  // "Water on the floor"
  Priority priority{};
  Latching latching{};
  bool may_be_shelved = true;  // and taken out of service
  Duration respond_within{0};
  Duration on_delay{0};  // defaults; the household's file may change them
  Duration off_delay{0};
  Duration said_again{0};  // while it stands, acknowledged or not; 0 = by its priority
  // While that rule is on, this alarm is its consequence and is not announced by itself.
  std::optional<room::RuleId> consequence_of = std::nullopt;
  bool (*applies)(const room::Room&) = nullptr;  // what it needs is installed
  Judgement (*judge)(const picture::Picture&) = nullptr;
  Record record;
};

// The priority of this cause: a pump that ignores ON floods nothing.
constexpr Priority priority_of(const Rule& rule, const Reason& why) {
  return why.why == Why::on_not_obeyed ? Priority::soon : rule.priority;
}

// How long after the last announcement a standing alarm of that priority is announced again.
constexpr Duration said_again_after(const Rule& rule, Priority priority, bool acknowledged) {
  if (rule.said_again > Duration{0}) return rule.said_again;
  if (priority == Priority::days) return std::chrono::days{7};
  if (priority == Priority::urgent && !acknowledged) return std::chrono::minutes{10};
  return std::chrono::hours{12};
}

// An alarm that stands so long is stale: the digest asks to fix it, shelve it or take it out.
constexpr Duration stale_after(Priority priority) {
  return priority == Priority::days ? std::chrono::days{7} : std::chrono::hours{24};
}

// The longest time an alarm may be shelved for.
constexpr Duration shelf_longest(Priority priority) {
  if (priority == Priority::urgent) return std::chrono::hours{4};
  if (priority == Priority::soon) return std::chrono::hours{24};
  return std::chrono::days{7};
}

}  // namespace tidewright::rules
