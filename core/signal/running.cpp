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

bool all_off(const room::Room& room, const state::Signals& signals, const state::Drives& drives) {
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    const auto actuator = static_cast<room::ActuatorIndex>(i);
    if (drives[i].on || works(room, signals, drives, actuator)) return false;
  }
  return !room.actuators.empty();
}

bool purifies(const room::Room& room, const state::Signals& signals, const state::Drives& drives) {
  const auto driving = room::driving(room);
  return driving && works(room, signals, drives, *driving);
}

}  // namespace tidewright::signal
