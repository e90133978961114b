#include "core/interlock/decide.hpp"

#include "core/interlock/causes.hpp"
#include "core/interlock/command.hpp"
#include "core/interlock/reset.hpp"
#include "core/interlock/trip.hpp"

namespace tidewright::interlock {

void decide(const picture::Picture& picture, const state::Findings& findings,
            const state::MakeWater& water, const Event& event, state::Latches& latches,
            state::Armed& armed, state::Drives& drives, Effects& effects, Wake& wake) {
  reset(picture, findings, event, latches, armed, effects);
  const HeldRoles roles = trip(picture, findings, latches);
  if (picture.circumstances.unclean) {
    const Instant settled = picture.circumstances.started + wait_after_unclean_start;
    if (picture.now < settled) wake.by(settled);
  }
  for (std::size_t i = 0; i < picture.room.actuators.size(); ++i) {
    const Order order{water.wants_water, water.why, held(roles, picture.room.actuators[i].role)};
    command(picture, event, static_cast<room::ActuatorIndex>(i), order, drives[i], effects, wake);
  }
  if (roles.latched_anew) effects.push(Persist{});
}

}  // namespace tidewright::interlock
