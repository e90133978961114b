// What a room can be asked and told, for whoever offers it to people: hubs and the panel.
#pragma once

#include "core/room/room.hpp"

namespace tidewright::hub {

// Whether a person can compare it with an instrument of their own.
inline bool can_be_measured(room::Quantity quantity) {
  return quantity == room::Quantity::dissolved_solids || quantity == room::Quantity::temperature ||
         quantity == room::Quantity::level || quantity == room::Quantity::flow ||
         quantity == room::Quantity::pressure;
}

}  // namespace tidewright::hub
