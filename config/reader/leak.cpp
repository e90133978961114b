#include "config/reader/instruments.hpp"

namespace tidewright::config {

void read_leaks(Draft& draft) {
  for (const Section& leak : draft.leaks) {
    add_instrument(draft, leak,
                   {.quantity = room::Quantity::wetness,
                    .place = room::Place::floor,
                    .id = leak.id(),
                    .where = "the floor"});
  }
}

}  // namespace tidewright::config
