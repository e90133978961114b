// Something that the water room uses up must be ordered.
#include "core/picture/stock.hpp"
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  for (std::size_t i = 0; i < picture.room.supplies.size(); ++i) {
    const auto index = static_cast<room::SupplyIndex>(i);
    const auto stock = picture::stock_now(picture.room, picture.ledger, index, picture.now);
    if (!stock || !stock->low) continue;
    return {Verdict::on,
            {Why::stock_below,
             index,
             {static_cast<float>(stock->amount),
              static_cast<float>(picture.room.supplies[i].order_below)}},
            never};
  }
  return {};
}

bool applies(const room::Room& room) { return !room.supplies.empty(); }

}  // namespace

extern const Rule stock_low{
    .id = room::RuleId::stock_low,
    .name = "stock_low",
    .title = "Something must be ordered",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = std::chrono::days{7},
    .on_delay = 0s,
    .off_delay = 0s,
    .applies = applies,
    .judge = judge,
    .record = {.source = "what `stocked` told last, less what the file says is used since, by the "
                         "day or by the litre made; the first supply that is low is named",
               .limit = "less than the supply's order_below",
               .origin = "the household's choice; what was never told is not judged",
               .causes = "it has been used",
               .consequence = "no salt, resin or cartridge is there when it is needed",
               .action = "Order it. When it has come, count all of it and tell `stocked`",
               .automatic = "nothing but reckoning what is left",
               .test = "tell `stocked` with less than order_below, then with what is there"}};

}  // namespace tidewright::rules
