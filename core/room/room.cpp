#include "core/room/room.hpp"

namespace tidewright::room {

std::optional<InstrumentIndex> find(const Room& room, Quantity quantity, Place place) {
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    const Instrument& instrument = room.instruments[i];
    if (instrument.quantity == quantity && instrument.place == place) {
      return static_cast<InstrumentIndex>(i);
    }
  }
  return std::nullopt;
}

std::optional<InstrumentIndex> find(const Room& room, Quantity quantity, ActuatorIndex actuator) {
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    const Instrument& instrument = room.instruments[i];
    if (instrument.quantity == quantity && instrument.place == Place::plug &&
        instrument.subject == actuator) {
      return static_cast<InstrumentIndex>(i);
    }
  }
  return std::nullopt;
}

std::optional<ActuatorIndex> find(const Room& room, Role role) {
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    if (room.actuators[i].role == role) return static_cast<ActuatorIndex>(i);
  }
  return std::nullopt;
}

std::optional<ActuatorIndex> driving(const Room& room) {
  if (!room.purifier || room.purifier->driven_by >= room.actuators.size()) return std::nullopt;
  return room.purifier->driven_by;
}

bool fills_to_a_mark(const Room& room) {
  if (!driving(room) || !room.vat) return false;
  if (find(room, Quantity::float_switch, Place::vat)) return true;
  return room.vat->stop_at && find(room, Quantity::level, Place::vat);
}

bool go_together(const Room& room, ActuatorIndex a, ActuatorIndex b) {
  return a == b ||
         (facts(room.actuators[a].role).makes_water && facts(room.actuators[b].role).makes_water);
}

Duration feedback_due(const Room& room, ActuatorIndex actuator) {
  Duration due = room.actuators[actuator].travel + std::chrono::seconds{10};
  const auto feedback = find(room, Quantity::feedback, actuator);
  if (feedback && !room.instruments[*feedback].on_change) {
    due += room.instruments[*feedback].reports_every;
  }
  return due;
}

}  // namespace tidewright::room
