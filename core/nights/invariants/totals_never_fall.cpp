#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

// More than this, of the rated flow, is no flow but a jump.
constexpr double flow_most = 3;

Complaint judge(const Scene& scene) {
  const state::Ledger& before = scene.state_before.ledger;
  const state::Ledger& after = scene.state.ledger;
  if (after.made < before.made || after.flowed < before.flowed) return "the litres fall";
  const Duration passed = scene.state.circumstances.now - scene.state_before.circumstances.now;
  for (std::size_t i = 0; i < scene.room.actuators.size(); ++i) {
    const Duration grown = after.working[i].total - before.working[i].total;
    if (grown < Duration{0} || grown > passed) {
      return fmt::format("running time of {} goes from {:.0f} s to {:.0f} s in {:.0f} s",
                         scene.room.actuators[i].id, seconds(before.working[i].total),
                         seconds(after.working[i].total), seconds(passed));
    }
  }
  if (!scene.room.purifier) return std::nullopt;
  const double most = flow_most * scene.room.purifier->rated.value * hours(passed) + 1e-6;
  if ((after.flowed - before.flowed).value > most) return "the litres jump";
  return std::nullopt;
}

}  // namespace

extern const Invariant totals_never_fall{.number = 17,
                                         .name = "totals_never_fall",
                                         .sentence = "totals never fall, jump or begin anew",
                                         .after_step = judge};

}  // namespace tidewright::nights
