#include "core/interlock/exclusive.hpp"

#include "core/base/mutant.hpp"

namespace tidewright::interlock {
namespace {

using room::Role;

// Filling against emptying: the vat that is filled is not drawn from, and its water goes not at
// once to the vat and to the drain.
constexpr std::array pairs{
    Exclusive{Role::fill_valve, Role::divert_valve},
    Exclusive{Role::fill_valve, Role::flush_valve},
    Exclusive{Role::fill_valve, Role::transfer_pump},
    Exclusive{Role::booster_pump, Role::transfer_pump},
    Exclusive{Role::feed_valve, Role::transfer_pump},
};

// On as far as anything says so: commanded, confirmed, or still moving.
bool is_on(const picture::Picture& picture, room::ActuatorIndex i) {
  const state::Drive& drive = picture.drives[i];
  const auto feedback = picture::confirmed(picture, i);
  if (drive.on || feedback == true) return true;
  return !feedback && picture.now < drive.commanded + picture.room.actuators[i].travel;
}

void hold(Held& held, Hold as, room::ActuatorIndex because_of) {
  if (held.hold >= as) return;
  held = {as, {Why::excluded, because_of, {}}};
}

}  // namespace

std::span<const Exclusive> exclusives() { return pairs; }

void exclude(const picture::Picture& picture, const std::array<bool, room::actuators_max>& wanted,
             HeldActuators& held) {
  if (mutant(Mutant::exclusive_not_checked)) return;
  for (const Exclusive& pair : pairs) {
    const auto weaker = room::find(picture.room, pair.gives_way);
    const auto stronger = room::find(picture.room, pair.to);
    if (!weaker || !stronger) continue;
    const bool free = wanted[*stronger] && held[*stronger].hold == Hold::none;
    const bool runs = is_on(picture, *stronger);
    if (free || runs) hold(held[*weaker], Hold::force_off, *stronger);
    if (!runs && is_on(picture, *weaker)) hold(held[*stronger], Hold::inhibit, *weaker);
  }
}

}  // namespace tidewright::interlock
