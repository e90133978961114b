#include "core/picture/stock.hpp"
#include "core/report/fields.hpp"
#include "core/report/phrases.hpp"
#include "core/report/things.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;

constexpr double furthest_days = 3650;

// The day on which to order, and why it cannot be said.
void add_order_by(const Picture& picture, const room::Supply& supply,
                  const picture::StockNow& stock, Fields& fields) {
  const auto days = picture::days_to_order(supply, stock);
  if (!days) {
    fields.unknown("order_by", stock.per_day ? "nothing is used of it, as far as the file says"
                                             : "its pace is not known in the first three days");
  } else if (*days > furthest_days) {
    fields.unknown("order_by", "not within ten years");
  } else {
    const auto whole = Duration{static_cast<Duration::rep>(*days)} * (24 * 3'600'000);
    fields.add("order_by", date(picture.now + whole, picture.circumstances.wall));
  }
}

}  // namespace

Thing supply(const Picture& picture, room::SupplyIndex index) {
  const room::Supply& supply = picture.room.supplies[index];
  const auto stock = picture::stock_now(picture.room, picture.ledger, index, picture.now);
  const std::string not_counted = "nobody has counted it yet: tell `stocked`";
  Fields fields{"supply", supply.id};
  fields.add("words", supply.words).add("unit", supply.unit);
  if (!stock) {
    for (const char* name : {"in_stock", "used_per_day", "order_by"}) {
      fields.unknown(name, not_counted);
    }
    return fields.add("order_below", supply.order_below).add("low", false).done();
  }
  fields.add("in_stock", stock->amount)
      .add_if("used_per_day", stock->per_day, "its pace is not known in the first three days", 2);
  add_order_by(picture, supply, *stock, fields);
  return fields.add("order_below", supply.order_below).add("low", stock->low).done();
}

}  // namespace tidewright::report
