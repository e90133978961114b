// The journal's text: one line a thing, as docs/journal.md describes it. The same text stands in
// journal.db, in an export, and in front of `replay`.
//
//   1 5c9f81d3 1042 1760000000123 reading instrument=floor value=1 arrival=live taken=0 raw=wet
//   version checksum sequence instant kind fields…
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>

#include "core/event.hpp"
#include "core/room/room.hpp"

namespace tidewright::store {

inline constexpr unsigned journal_version = 1;

// What a line holds besides an event. A chapter opens with both, so that what follows can be lived
// through again without anything from before.
struct HouseholdText {
  std::string text;  // of the household's file
};
struct StateText {
  std::string text;    // of the state after `sequence`, as state_text.hpp writes it
  bool fresh = false;  // a run begins here; else the run before goes on
};

struct Line {
  std::uint64_t sequence = 0;  // of the event; of a chapter's opening: of the last event before it
  Instant at = long_ago;
  std::variant<Event, HouseholdText, StateText> what;
  std::string raw;  // payload that the event was made of
};

// Without a line feed, and holding none.
std::string print(const room::Room&, std::uint64_t sequence, const Event&, std::string_view raw);
std::string print(std::uint64_t sequence, Instant, const HouseholdText&);
std::string print(std::uint64_t sequence, Instant, const StateText&);

// Why a line cannot be read, for a person; nullptr if it can. The room names the things that an
// event is about; household and state lines do not need it. Never throws, whatever the bytes.
using Trouble = const char*;
Trouble parse(std::string_view text, const room::Room&, Line&);

}  // namespace tidewright::store
