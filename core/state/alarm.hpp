// The life cycle of one alarm (ISA-18.2 / IEC 62682, from memory: the states' meaning, our words).
// Nothing here can change a command: this stage runs after the interlock.
#pragma once

#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/base/units.hpp"
#include "core/room/rule.hpp"

namespace tidewright::state {

enum class Suppression : std::uint8_t { none, shelved, by_design, out_of_service };

struct Alarm {
  bool active = false;
  bool acknowledged = true;
  Suppression suppression = Suppression::none;
  std::uint32_t occurrence = 0;  // counts up for ever
  Instant since = long_ago;      // of the present or last activation
  Instant acknowledged_at = long_ago;
  Instant announced = long_ago;  // last announcement of this occurrence; long_ago: none yet
  Instant shelved_until = never;
  bool chattering = false;  // it came so often that further announcements are held
  Reason why;
};

using Alarms = room::PerRule<Alarm>;

// Many new alarms in a few minutes are told as one.
struct Flood {
  Instant told = long_ago;  // the last summary
};

// Once a week, what stands for long, what is hidden and what was made.
struct Digest {
  Instant told = long_ago;  // the last one, or the beginning of the first week
  Litres made;              // in the week before it
  Litres made_until_then;   // the ledger's total at that time
};

}  // namespace tidewright::state
