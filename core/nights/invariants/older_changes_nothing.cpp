#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

Complaint judge(const Scene& scene) {
  const auto* reading = std::get_if<Reading>(&scene.event.what);
  if (reading == nullptr || reading->taken == long_ago) return std::nullopt;
  const Heard& heard = scene.before.heard[reading->instrument];
  const bool older = heard.live && reading->taken <= heard.live_at;
  if (!older || reading->value >= 0.5) return std::nullopt;  // danger counts at any age
  const state::Signal& before = scene.state_before.signals[reading->instrument];
  const state::Signal& after = scene.state.signals[reading->instrument];
  if (before.value == after.value && before.received == after.received) return std::nullopt;
  return fmt::format("{} had a newer word, and an older one changed it",
                     scene.room.instruments[reading->instrument].id);
}

}  // namespace

extern const Invariant older_changes_nothing{
    .number = 13,
    .name = "older_changes_nothing",
    .sentence = "a word that is older than the last one, by its own time, changes nothing",
    .after_step = judge};

}  // namespace tidewright::nights
