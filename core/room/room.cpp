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

}  // namespace tidewright::room
