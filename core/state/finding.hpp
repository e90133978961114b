// What the rules found, after their delays. Written by rules/judge; interlock and alarm read only
// this.
#pragma once

#include <array>
#include <cstdint>

#include "core/base/instant.hpp"
#include "core/base/reason.hpp"
#include "core/room/rule.hpp"

namespace tidewright::state {

// A rule's judgement (`raw`) and the same after its on-delay and off-delay (`active`).
struct Finding {
  bool raw = false;
  bool active = false;
  Instant raw_since = long_ago;
  Instant active_since = long_ago;
  Reason why;                            // of the latest judgement that was on
  std::array<Instant, 6> activations{};  // newest first; long_ago where there are fewer
};

using Findings = room::PerRule<Finding>;

}  // namespace tidewright::state
