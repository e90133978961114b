// Cause and effect as one table: what stops what, and what a person must look at first.
// Printed by `list interlocks` and checked cell by cell.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "core/base/reason.hpp"
#include "core/picture/picture.hpp"

namespace tidewright::interlock {

enum class Hold : std::uint8_t {
  none,
  inhibit,    // may not start; what runs goes on
  force_off,  // off while the cause stands
  trip,       // off, and latched until a person resets
};

// What a cause does to each role of actuator.
struct Holds {
  Hold booster_pump{};
  Hold feed_valve{};
};

struct Row {
  std::string_view cause;
  Holds holds;
  // The reason while the cause stands.
  std::optional<Reason> (*stands)(const picture::Picture&, const state::Findings&);
  // The rule that owns the latch, and at which stop of a running actuator within 24 h a force_off
  // latches too; 0 = never. A trip latches always.
  std::optional<room::RuleId> rule;
  std::size_t latches_at_stop = 0;
};

// In order of precedence: the first that stands is what a person is told.
std::span<const Row> matrix();

Hold hold_of(const Row&, room::Role);

}  // namespace tidewright::interlock
