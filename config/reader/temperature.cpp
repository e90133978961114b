#include <fmt/format.h>

#include "config/reader/instruments.hpp"

namespace tidewright::config {

void read_temperatures(Draft& draft) {
  const Section* room_has = nullptr;
  const Section* feed_has = nullptr;
  for (const Section& from : draft.temperatures) {
    const bool feed = from.text("of") == "feed water";
    const Section*& first = feed ? feed_has : room_has;
    if (first != nullptr) {
      draft.problems.add(from.at(),
                         fmt::format("{} is a second thermometer of the {}, after {}; expected one",
                                     from.title(), from.text("of"), first->title()),
                         "`of` is \"room\" or \"feed water\". A second one of the same stands as "
                         "`twin` in the first.");
    }
    first = &from;
    add_instrument(draft, from,
                   {.quantity = room::Quantity::temperature,
                    .place = feed ? room::Place::feed : room::Place::room,
                    .id = from.id(),
                    .where = feed ? "the feed water" : "the room"});
  }
}

}  // namespace tidewright::config
