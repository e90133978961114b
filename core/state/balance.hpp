// The water balance: how the vat's level moves while one thing goes on, and what that says.
// Written by ledger/balance only.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/units.hpp"

namespace tidewright::state {

inline constexpr std::size_t slices_max = 48;

// A stretch of standing or of running, as mean levels over equal times, oldest first.
struct Stretch {
  bool standing = false;       // else running
  Instant began = long_ago;    // last time that it was neither, or the other one
  Instant held_at = long_ago;  // when the gauge last spoke well
  Litres held;                 // what it said
  std::array<float, slices_max> levels{};
  std::uint8_t count = 0;
  Duration lived{0};       // of the open slice
  double litre_hours = 0;  // of the open slice
};

// What leaves the vat by habit while it stands, the tank's top-off above all.
struct Habit {
  LitresPerHour usual;
  double restless = 0;       // L2/h: how unevenly it goes
  std::uint8_t learned = 0;  // times learned, counted no further than needed
  std::uint8_t slices = 0;   // of the time being watched
  bool waits = false;        // `fell` is learned once the time after it was no leak either
  LitresPerHour fell;
  LitresPerHour fell_error;
};

// A steady fall of the level while nothing runs.
struct Leak {
  bool found = false;
  Instant began = long_ago;
  LitresPerHour rate;       // habit included
  LitresPerHour error;      // its standard deviation
  Litres litres;            // gone so far
  std::uint8_t slices = 0;  // since it was found, counted no further than needed
};

// A running purifier from which less comes than its own usual.
struct Shortfall {
  bool found = false;
  LitresPerHour rate;   // what comes
  LitresPerHour usual;  // what should
  Litres missing;       // so far
  Duration lasting{0};
  float deviations = 0;  // of the gauge's noise, that it is beyond doubt
};

// Water that left the vat in falls at most half an hour apart.
struct Draws {
  Litres litres;  // of the present or last draw
  Instant began = long_ago;
  Instant last = long_ago;
  Instant ours = long_ago;  // when the daemon's own transfer last took water
  double an_hour = 0;       // how often, at `began`; forgotten in a week
  Litres largest;           // of the large ones, slowly forgotten
  std::uint8_t known = 0;   // large ones, counted no further than needed
};

struct Balance {
  Stretch stretch;
  Habit habit;
  Leak leak;
  Shortfall stall;  // nothing comes any more
  Shortfall slow;   // too little comes
  Draws draws;
};

}  // namespace tidewright::state
