#include <algorithm>

#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

Complaint judge(const Scene& scene) {
  Instant earliest = never;
  bool any_first = false;
  for (const state::Latch& latch : scene.state.latches.items) {
    if (!latch.set) continue;
    earliest = std::min(earliest, latch.since);
    any_first = any_first || latch.first;
  }
  if (earliest == never) return std::nullopt;
  if (!any_first) return "latches are set, and none is marked as the first";
  for (const state::Latch& latch : scene.state.latches.items) {
    if (latch.set && latch.first && latch.since > earliest) {
      return "a latch is marked as the first that came later";
    }
  }
  return std::nullopt;
}

}  // namespace

extern const Invariant first_cause_is_kept{
    .number = 18,
    .name = "first_cause_is_kept",
    .sentence = "of the latches that stand, the earliest is marked as the first cause",
    .after_step = judge};

}  // namespace tidewright::nights
