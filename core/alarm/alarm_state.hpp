// The one word for an alarm that panel, hub and log show.
#pragma once

#include <cstdint>
#include <string_view>

#include "core/state/alarm.hpp"

namespace tidewright::alarm {

enum class AlarmState : std::uint8_t {
  normal,
  unacknowledged,
  acknowledged,
  returned_unacknowledged,
  latched_unacknowledged,
  latched_acknowledged,
  shelved,
  suppressed,
  out_of_service,
};

// Derived, never stored. `latched` is the interlock's latch of the same rule.
AlarmState state_of(const state::Alarm&, bool latched);
std::string_view name(AlarmState);

}  // namespace tidewright::alarm
