// What is known of each instrument: the last value, and how far it may be believed.
// Written by signal/ only; read by everything after it.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/quality.hpp"
#include "core/base/reason.hpp"
#include "core/room/room.hpp"

namespace tidewright::state {

struct Signal {
  double value = 0;               // of the last reading that was taken up
  double doubted = 0;             // of a leap that was passed over
  std::array<float, 4> before{};  // the readings before the last one, newest first: for a median
  Instant received = long_ago;    // of the last live reading, or the source time of a dated one
  Instant changed = long_ago;     // when `value` last changed
  Instant lost = long_ago;        // when it last stopped being good
  Instant differs = never;        // since when its twin says something else; never: they agree
  Duration flat{0};               // it has said the same for so long while change was expected
  std::uint32_t refused = 0;      // messages that were no reading, and leaps, in all
  std::uint8_t refused_in_a_row = 0;
  std::uint8_t good_in_a_row = 0;
  Quality quality = Quality::bad;
  DeviceStatus status = DeviceStatus::check_function;
  Why why = Why::never_seen;
  // What a comparison with other instruments has against it, however good its own readings are.
  Why doubt = Why::nothing;
  std::uint8_t against = no_subject;     // the instrument that contradicts it
  std::array<float, 2> doubt_numbers{};  // a and b of that reason
  std::uint8_t befores = 0;              // how many of `before` there are
  bool seen = false;                     // `value` holds a reading
  bool live = false;                     // and one came since the start or the link's return
  bool available = true;                 // as its availability topic says
};

using Signals = std::array<Signal, room::instruments_max>;

}  // namespace tidewright::state
