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
  double value = 0;             // of the last reading that was taken up
  double doubted = 0;           // of a leap that was passed over
  Instant received = long_ago;  // of the last live reading, or the source time of a dated one
  Instant changed = long_ago;   // when `value` last changed
  Instant lost = long_ago;      // when it last stopped being good
  std::uint32_t refused = 0;    // messages that were no reading, and leaps, in all
  std::uint8_t refused_in_a_row = 0;
  std::uint8_t good_in_a_row = 0;
  Quality quality = Quality::bad;
  DeviceStatus status = DeviceStatus::check_function;
  Why why = Why::never_seen;
  bool seen = false;      // `value` holds a reading
  bool live = false;      // and one came since the start or the link's return
  bool available = true;  // as its availability topic says
};

using Signals = std::array<Signal, room::instruments_max>;

}  // namespace tidewright::state
