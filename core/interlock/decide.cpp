#include "core/interlock/decide.hpp"

#include <algorithm>

#include "core/interlock/bypass.hpp"
#include "core/interlock/causes.hpp"
#include "core/interlock/command.hpp"
#include "core/interlock/exclusive.hpp"
#include "core/interlock/reset.hpp"
#include "core/interlock/trip.hpp"

namespace tidewright::interlock {
namespace {

// Who wants it, and why or why not.
struct Want {
  bool wanted = false;
  Reason why;
};

Want want_of(const picture::Picture& picture, const state::MakeWater& water,
             const state::AttendedRuns& attended, const state::LeaseTests& tests, std::size_t i) {
  if (tests[i].phase == state::LeasePhase::cut) {
    return {false, {Why::lease_not_kept, static_cast<std::uint8_t>(i), {}}};
  }
  if (state::wants_on(tests[i])) {
    return {true, {Why::lease_test_began, static_cast<std::uint8_t>(i), {}}};
  }
  if (facts(picture.room.actuators[i].role).makes_water) return {water.wants_water, water.why};
  return {picture.now < attended[i].until, attended[i].why};
}

// A run that nobody renews, as one begun by hand, must end in time too.
void wake_at_limits(const picture::Picture& picture, Wake& wake) {
  for (std::size_t i = 0; i < picture.room.actuators.size(); ++i) {
    const room::Actuator& actuator = picture.room.actuators[i];
    const state::Working& working = picture.ledger.working[i];
    if (!working.on) continue;
    const Duration left =
        std::min(actuator.run_longest - working.run, actuator.on_per_day_longest - working.day);
    if (left > Duration{0}) wake.by(picture.now + left);
  }
}

}  // namespace

void decide(const picture::Picture& picture, const state::Findings& findings,
            const state::MakeWater& water, const state::AttendedRuns& attended,
            const state::LeaseTests& tests, const Event& event, state::Bypasses& bypasses,
            state::Latches& latches, state::Armed& armed, state::Drives& drives, Effects& effects,
            Wake& wake) {
  reset(picture, findings, event, latches, armed, effects);
  bypass(picture, event, bypasses, effects, wake);
  HeldActuators held = trip(picture, findings, bypasses, latches);
  if (picture.circumstances.unclean) {
    const Instant settled = picture.circumstances.started + wait_after_unclean_start;
    if (picture.now < settled) wake.by(settled);
  }
  wake_at_limits(picture, wake);
  std::array<bool, room::actuators_max> wanted{};
  for (std::size_t i = 0; i < picture.room.actuators.size(); ++i) {
    wanted[i] = want_of(picture, water, attended, tests, i).wanted;
  }
  exclude(picture, wanted, held);
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    const Order order{.wanted = wanted[n],
                      .want = want_of(picture, water, attended, tests, n).why,
                      .held = held[i],
                      .renewed = tests[n].phase != state::LeasePhase::silent};
    command(picture, event, i, order, drives[n], effects, wake);
  }
  if (held.latched_anew) effects.push(Persist{});
}

}  // namespace tidewright::interlock
