// What a procedure must know of latches: that one ends it.
#pragma once

#include <optional>

#include "core/base/reason.hpp"
#include "core/state/latch.hpp"

namespace tidewright::procedure {

// The first latch that holds the role, in the catalogue's order: it ends the want and forbids a
// start.
inline std::optional<Reason> held_by_latch(const state::Latches& latches, room::Role role) {
  for (std::size_t i = 0; i < room::rule_count; ++i) {
    if (!state::holds(latches.items[i], role)) continue;
    return Reason{Why::held_by_latch, no_subject, {static_cast<float>(i)}};
  }
  return std::nullopt;
}

}  // namespace tidewright::procedure
