#include "core/signal/running.hpp"

namespace tidewright::signal {

bool works(const room::Room& room, const state::Signals& signals, const state::Drives& drives,
           room::ActuatorIndex actuator) {
  const auto feedback = room::find(room, room::Quantity::feedback, actuator);
  if (feedback && signals[*feedback].quality == Quality::good) {
    return signals[*feedback].value >= 0.5;
  }
  return drives[actuator].on;
}

bool feed_is_off(const room::Room& room, const state::Signals& signals,
                 const state::Drives& drives) {
  bool any = false;
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    const room::Role role = room.actuators[i].role;
    if (!room::facts(role).moves_water || role == room::Role::transfer_pump) continue;
    any = true;
    const auto actuator = static_cast<room::ActuatorIndex>(i);
    if (drives[i].on || works(room, signals, drives, actuator)) return false;
  }
  return any;
}

bool is_diverted(const room::Room& room, const state::Signals& signals,
                 const state::Drives& drives) {
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    if (room.actuators[i].role != room::Role::divert_valve) continue;
    if (works(room, signals, drives, static_cast<room::ActuatorIndex>(i))) return true;
  }
  return false;
}

bool purifies(const room::Room& room, const state::Signals& signals, const state::Drives& drives) {
  const auto driving = room::driving(room);
  return driving && works(room, signals, drives, *driving);
}

}  // namespace tidewright::signal
