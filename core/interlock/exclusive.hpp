// Actuators of which never two are on. Of each pair one gives way: what a person asked for, or what
// rinses to the drain, goes before the long fill, which goes on afterwards.
#pragma once

#include <array>
#include <span>

#include "core/interlock/trip.hpp"

namespace tidewright::interlock {

struct Exclusive {
  room::Role gives_way{};
  room::Role to{};
};

std::span<const Exclusive> exclusives();

// Adds to what is held: the one that gives way is forced off while the other is wanted and free to
// run, or runs; the other does not start until it is off. `wanted` is by actuator.
void exclude(const picture::Picture&, const std::array<bool, room::actuators_max>& wanted,
             HeldActuators&);

}  // namespace tidewright::interlock
