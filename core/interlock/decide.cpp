#include "core/interlock/decide.hpp"

#include <algorithm>

#include "core/base/mutant.hpp"
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

// What a test of a lease wants of its actuator, and of what that cannot run without; or none.
std::optional<Want> tried(const room::Room& room, const state::LeaseTest& test,
                          room::ActuatorIndex i) {
  using state::LeasePhase;
  if (test.phase == LeasePhase::none) return std::nullopt;
  if (!room::go_together(room, i, test.actuator)) return std::nullopt;
  if (test.phase == LeasePhase::cut || test.phase == LeasePhase::over) return Want{false, test.why};
  return test.by_person ? std::optional{Want{true, test.why}} : std::nullopt;
}

Want want_of(const picture::Picture& picture, const state::MakeWater& water,
             const state::AttendedRuns& attended, const state::LeaseTest& test,
             room::ActuatorIndex i) {
  if (const auto want = tried(picture.room, test, i)) return *want;
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
            const state::LeaseTest& test, const Event& event, state::Bypasses& bypasses,
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
  std::array<Want, room::actuators_max> wants{};
  std::array<bool, room::actuators_max> wanted{};
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    wants[n] = want_of(picture, water, attended, test, static_cast<room::ActuatorIndex>(n));
    wanted[n] = wants[n].wanted;
  }
  exclude(picture, wanted, held);
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    if (mutant(Mutant::lease_test_ignores_trips) && test.phase != state::LeasePhase::none &&
        test.actuator == i) {
      held[i] = {};
    }
    const bool silent = test.phase == state::LeasePhase::silent && test.actuator == i;
    const Order order{
        .wanted = wants[n].wanted, .want = wants[n].why, .held = held[i], .renewed = !silent};
    command(picture, event, i, order, drives[n], effects, wake);
  }
  bypasses.passed = picture.now;
  if (held.latched_anew) effects.push(Persist{});
}

}  // namespace tidewright::interlock
