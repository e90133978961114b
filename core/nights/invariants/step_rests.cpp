#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

Complaint judge(const Scene& scene) {
  if (!std::holds_alternative<Tick>(scene.event.what) || scene.wake > scene.event.at) {
    return std::nullopt;
  }
  return "it asks to be woken at once, for ever";
}

}  // namespace

extern const Invariant step_rests{
    .number = 15,
    .name = "step_rests",
    .sentence = "whatever is due is done in one pass: the daemon never wakes itself without end",
    .after_step = judge};

}  // namespace tidewright::nights
