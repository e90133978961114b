// Once a week: what is not urgent and still stands, what has stood for too long, what is hidden.
// report/digest makes the words.
#pragma once

#include <optional>

#include "core/base/units.hpp"
#include "core/effect.hpp"
#include "core/room/room.hpp"
#include "core/rules/rule.hpp"
#include "core/state/alarm.hpp"
#include "core/state/circumstances.hpp"
#include "core/state/finding.hpp"
#include "core/state/latch.hpp"

namespace tidewright::alarm {

// Why an alarm is in the digest.
enum class Listed : std::uint8_t {
  stale,           // a high one that has stood for a day, a low one for a week
  standing,        // a low one, not for so long
  hidden,          // shelved or out of service while its cause stands
  out_of_service,  // and its cause does not stand: named, but no reason for a digest
};
std::optional<Listed> listed(const rules::Rule&, const state::Alarm&, bool latched, Instant now);

// Announces the digest when a week is over and there is something to say; by day and with a line to
// the broker. A week without anything to say passes in silence. Low alarms that are acknowledged
// and still stand are unacknowledged anew by it: it is their reminder.
void digest(const state::Latches&, const state::Circumstances&, Litres made, state::Alarms&,
            state::Digest&, Effects&, Wake&);

}  // namespace tidewright::alarm
