// Actuators of which never two are on. Of each pair one gives way: what a person asked for, or what
// rinses to the drain, goes before the long fill, which goes on afterwards.
#pragma once

#include <array>

#include "core/interlock/trip.hpp"

namespace tidewright::interlock {

struct Exclusive {
  room::Role gives_way{};
  room::Role to{};
};

// Filling against emptying: the vat that is filled is not drawn from, and its water goes not at
// once to the vat and to the drain.
inline constexpr std::array exclusives{
    Exclusive{room::Role::fill_valve, room::Role::divert_valve},
    Exclusive{room::Role::fill_valve, room::Role::flush_valve},
    Exclusive{room::Role::fill_valve, room::Role::transfer_pump},
    Exclusive{room::Role::booster_pump, room::Role::transfer_pump},
    Exclusive{room::Role::feed_valve, room::Role::transfer_pump},
};

// Adds to what is held: the one that gives way is forced off while the other is wanted and free to
// run, or runs; the other does not start until it is off. `wanted` is by actuator.
void exclude(const picture::Picture&, const std::array<bool, room::actuators_max>& wanted,
             HeldActuators&);

}  // namespace tidewright::interlock
