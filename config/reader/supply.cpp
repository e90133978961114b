#include <fmt/format.h>

#include "config/reader/draft.hpp"

namespace tidewright::config {

void read_supplies(Draft& draft) {
  for (const Section& from : draft.supplies) {
    room::Supply supply;
    supply.id = from.id();
    supply.words = from.told("words") != nullptr ? from.text("words") : from.id();
    supply.unit = from.text("unit");
    supply.order_below = from.number("order_below");
    supply.used_in_30_days = from.number("used_in_30_days");
    supply.used_per_1000_litres = from.number("used_per_1000_l");
    draft.household.room.supplies.push_back(std::move(supply));
  }
  if (draft.supplies.size() <= room::supplies_max) return;
  draft.problems.add(draft.supplies[room::supplies_max].at(),
                     fmt::format("there are {} supplies; expected at most {}",
                                 draft.supplies.size(), room::supplies_max),
                     "Keep an eye on those that take longest to come.");
}

}  // namespace tidewright::config
