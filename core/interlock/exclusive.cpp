#include "core/interlock/exclusive.hpp"

namespace tidewright::interlock {
namespace {

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

void exclude(const picture::Picture& picture,
             const std::array<bool, room::actuators_max>& wanted, HeldActuators& held) {
  for (const Exclusive& pair : exclusives) {
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
