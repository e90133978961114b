// Cause and effect as one table: what stops what, and what a person must look at first.
// Printed by `list interlocks` and checked cell by cell.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/base/reason.hpp"
#include "core/interlock/causes.hpp"
#include "core/picture/picture.hpp"
#include "core/room/cause.hpp"

namespace tidewright::interlock {

enum class Hold : std::uint8_t {
  none,
  inhibit,    // may not start; what runs goes on
  force_off,  // off while the cause stands
  trip,       // off, and latched until a person resets
};

using Holds = room::PerRole<Hold>;

struct Row {
  room::CauseId id{};
  std::string_view cause;
  Holds holds;
  // The reason while the cause stands: for the whole room, or (the other is null) for one actuator
  // of a role that the row holds.
  Cause (*stands)(const picture::Picture&, const state::Findings&) = nullptr;
  Cause (*stands_for)(const picture::Picture&, const state::Findings&,
                      room::ActuatorIndex) = nullptr;
  // The rule that owns the latch, and at which stop of a running actuator within 24 h a force_off
  // latches too; 0 = never. A trip latches always.
  std::optional<room::RuleId> rule = std::nullopt;
  std::size_t latches_at_stop = 0;
  // The longest that a person may take it out of the interlock; 0 = never.
  Duration bypass_longest{0};
};

// In the order of CauseId.
std::span<const Row> matrix();

// Whether the row latches whenever its cause comes.
bool trips(const Row&);

}  // namespace tidewright::interlock
