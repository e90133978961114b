// What should be left of a supply since it was counted.
#pragma once

#include <optional>

#include "core/room/room.hpp"
#include "core/state/ledger.hpp"

namespace tidewright::picture {

// In the supply's own unit.
struct StockNow {
  double amount = 0;
  bool low = false;               // below the figure at which to order
  std::optional<double> per_day;  // none in the first three days where it goes by litres made
};

// None until it was counted (`stocked`). The supply must be one of the room's.
std::optional<StockNow> stock_now(const room::Room&, const state::Ledger&, room::SupplyIndex,
                                  Instant now);

// Days until it must be ordered; 0 if it is low; none if it never will be or that is not known.
std::optional<double> days_to_order(const room::Supply&, const StockNow&);

}  // namespace tidewright::picture
