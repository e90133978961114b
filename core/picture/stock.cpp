#include "core/picture/stock.hpp"

#include <algorithm>

namespace tidewright::picture {
namespace {

constexpr double pace_known_after_days = 3;

}  // namespace

std::optional<StockNow> stock_now(const room::Room& room, const state::Ledger& ledger,
                                  room::SupplyIndex index, Instant now) {
  const room::Supply& supply = room.supplies[index];
  const state::Stock& stock = ledger.stocks[index];
  if (stock.counted == long_ago) return std::nullopt;
  const double days = hours(now - stock.counted) / 24;
  const double by_time = supply.used_in_30_days / 30;
  const double by_litres = (ledger.made - stock.made).value / 1000 * supply.used_per_1000_litres;
  StockNow left;
  left.amount = std::max(0.0, stock.amount - days * by_time - by_litres);
  left.low = left.amount < supply.order_below;
  if (supply.used_per_1000_litres <= 0) {
    left.per_day = by_time;
  } else if (days >= pace_known_after_days) {
    left.per_day = by_time + by_litres / days;
  }
  return left;
}

std::optional<double> days_to_order(const room::Supply& supply, const StockNow& stock) {
  if (stock.low) return 0;
  if (!stock.per_day || *stock.per_day <= 0) return std::nullopt;
  return (stock.amount - supply.order_below) / *stock.per_day;
}

}  // namespace tidewright::picture
