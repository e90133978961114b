// What is known of each instrument: the last value, and how far it may be believed.
// Written by signal/judge only; read by everything after it.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/quality.hpp"
#include "core/base/reason.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

struct Signal {
  double value = 0;             // of the last reading, believed or not
  Instant received = long_ago;  // of the last live (or dated, in its window) reading
  double trusted = 0;           // of the last reading that was good
  Instant trusted_at = long_ago;
  Instant changed = long_ago;  // when `value` last changed
  Instant lost = long_ago;     // when it last stopped being good
  std::uint32_t refused = 0;   // messages that were no reading
  std::uint8_t refused_in_a_row = 0;
  std::uint8_t good_in_a_row = 0;
  Quality quality = Quality::bad;
  DeviceStatus status = DeviceStatus::check_function;
  Why why = Why::never_seen;
  bool seen_live = false;  // since the start or the last link loss
  bool seen = false;       // there is a value at all
  bool available = true;
};

using Signals = std::array<Signal, room::instruments_max>;

}  // namespace tidewright::state
