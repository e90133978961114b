#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

Complaint judge(const Scene& scene) {
  for (std::size_t n = 0; n < scene.room.instruments.size(); ++n) {
    const auto i = static_cast<room::InstrumentIndex>(n);
    if (scene.state.signals[i].quality != Quality::good || scene.witness.fresh(i)) continue;
    return fmt::format("{} is called good, and nothing live was heard of it in time",
                       scene.room.instruments[i].id);
  }
  return std::nullopt;
}

}  // namespace

extern const Invariant good_is_fresh{
    .number = 4,
    .name = "good_is_fresh",
    .sentence = "good is only what was heard live and in time; a retained message never makes it",
    .after_step = judge};

}  // namespace tidewright::nights
