#include <algorithm>

#include "core/nights/fault.hpp"
#include "core/nights/invariants/judging.hpp"

namespace tidewright::nights {
namespace {

// A person is needed where a latch stands, where a person has stopped it, or where a lease was
// not kept when it was tried.
bool waits_for_a_person(const State& state) {
  const auto& results = state.lease_tests.results;
  return state.make_water.demand == state::Demand::halted ||
         std::any_of(results.begin(), results.end(), state::has_failed) ||
         std::any_of(state.latches.items.begin(), state.latches.items.end(),
                     [](const state::Latch& latch) { return latch.set; });
}

Complaint judge(const Scene& scene) {
  const Night& night = scene.night;
  const Instant calm = scene.begin + night.calm_from;
  if (night.fills_by == Duration{0} || scene.witness.now < scene.begin + night.fills_by) {
    return std::nullopt;
  }
  const double mark = scene.witness.full_mark(scene.pretend);
  if (mark <= 0 || scene.witness.full_at >= calm) return std::nullopt;
  const bool somebody_acts =
      std::any_of(night.faults.begin(), night.faults.end(), [&](const Fault& fault) {
        return fault.kind->name == "asks_start" && fault.at >= night.calm_from;
      });
  // Without a demand it need not fill, unless it is below START; and what was drawn down to START
  // only later has its whole time from then on.
  const Instant begun = calm + fills_begin_within;
  const bool asked =
      state::asks_for_water(scene.state.make_water.demand) && scene.state.make_water.since <= begun;
  const bool demanded = somebody_acts || scene.witness.low_since <= begun || asked;
  if (!demanded || (!somebody_acts && waits_for_a_person(scene.state))) return std::nullopt;
  return fmt::format("all has been well for {:.1f} h, and the vat holds {:.0f} L of {:.0f} L",
                     hours(scene.witness.now - calm), scene.pretend.works().vat().holding().value,
                     mark);
}

}  // namespace

extern const Invariant fills_again{
    .number = 19,
    .name = "fills_again",
    .sentence =
        "once nothing is wrong the vat fills within bound, by itself; after a latched trip "
        "when a person has reset it and started",
    .after_step = judge};

}  // namespace tidewright::nights
