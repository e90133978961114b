#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

Complaint judge(const Scene& scene) {
  const Instant now = scene.witness.now;
  for (const state::Bypass& bypass : scene.state.bypasses.items) {
    if (now >= bypass.until || scene.witness.bypassed(bypass.cause)) continue;
    return fmt::format("{} is bypassed, and no person has confirmed that for now",
                       room::name(bypass.cause));
  }
  return std::nullopt;
}

}  // namespace

extern const Invariant bypass_is_asked_for{
    .number = 3,
    .name = "bypass_is_asked_for",
    .sentence =
        "a cause is bypassed only as a person confirmed it with its token within 30 s, for its "
        "time, and never over a restart",
    .after_step = judge};

}  // namespace tidewright::nights
