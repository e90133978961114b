// What several invariants ask.
#pragma once

#include <fmt/format.h>

#include "core/nights/invariant.hpp"

namespace tidewright::nights {

// Water goes through it: it must be OFF while anything may be wet.
inline bool moves_water(room::Role role) {
  return role != room::Role::mixing_pump && role != room::Role::heater;
}

// It fills the vat.
inline bool fills(room::Role role) {
  return role == room::Role::booster_pump || role == room::Role::feed_valve ||
         role == room::Role::fill_valve;
}

// Calls `judge(index)` for each actuator of such a role, until one complains.
template <class Judge>
Complaint for_each_actuator(const room::Room& room, bool (*such)(room::Role), const Judge& judge) {
  for (std::size_t n = 0; n < room.actuators.size(); ++n) {
    if (!such(room.actuators[n].role)) continue;
    if (auto complaint = judge(static_cast<room::ActuatorIndex>(n))) return complaint;
  }
  return std::nullopt;
}

// The same for each instrument of that quantity.
template <class Judge>
Complaint for_each_instrument(const room::Room& room, room::Quantity quantity, const Judge& judge) {
  for (std::size_t n = 0; n < room.instruments.size(); ++n) {
    if (room.instruments[n].quantity != quantity) continue;
    if (auto complaint = judge(static_cast<room::InstrumentIndex>(n))) return complaint;
  }
  return std::nullopt;
}

// It was OFF, and this step orders it ON.
inline bool starts(const Scene& scene, room::ActuatorIndex i) {
  return scene.witness.ordered[i].on && !scene.before.ordered[i].on;
}

}  // namespace tidewright::nights
