// What the household may see, as values with units and words. Knows no hub and no topic.
// Made by describe() off the decision thread, on a copy of the state; the daemon publishes the
// difference of two reports.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "core/base/instant.hpp"
#include "core/effect.hpp"
#include "core/room/room.hpp"
#include "core/state/state.hpp"

namespace tidewright::report {

// Not known: published as null with a `why` beside it, never as 0.
struct Unknown {
  friend bool operator==(const Unknown&, const Unknown&) = default;
};

using Value = std::variant<Unknown, bool, double, std::string, std::vector<std::string>>;

struct Field {
  std::string name;  // with its unit: `volume_l`
  Value value;
  int decimals = 1;  // of a double
  friend bool operator==(const Field&, const Field&) = default;
};

// One document: `vat/pure`, `mixing_vat`, `purifier`, `resin/lead`, `actuator/booster`,
// `alarm/leak`, `source/floor`, `supply/salt`, `ledger`, `protection`.
struct Thing {
  std::string kind;
  std::string id;  // empty where there is one of its kind
  std::vector<Field> fields;
  friend bool operator==(const Thing&, const Thing&) = default;
};

struct Report {
  Instant at = long_ago;  // display time is `at` by `wall`
  WallClock wall;
  std::vector<Thing> things;
};

// An announcement in words.
struct Message {
  Instant at = long_ago;
  std::uint8_t priority = 3;
  std::string id;  // the alarm's name, or `test`, or `digest`
  std::uint32_t occurrence = 0;
  std::string event;  // raised, reminder, cleared, summary, test, digest
  std::string title;
  std::string text;  // what happened, what the daemon did, what to do now, by when
};

// An alarm that stands, in whole sentences: what its announcement says, part by part.
struct Standing {
  std::string happened;
  std::string did;  // by the daemon itself
  std::string action;
  std::string by_when;
};

Report describe(const room::Room&, const State&);
Message message(const room::Room&, const State&, const Announcement&);

Standing standing(const room::Room&, const State&, room::RuleId);

// A reason as one plain sentence without a full stop: "pure vat 96.2 L at or above stop 95 L".
std::string words(const room::Room&, const Reason&);
// ISO 8601 with offset, in the household's own zone.
std::string wall_time(Instant, const WallClock&);

}  // namespace tidewright::report
