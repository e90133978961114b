// More water leaves the vat at once than is ever drawn from it.
#include "core/ledger/draws.hpp"
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  if (!picture.room.vat) return {};
  const state::Draws& draws = picture.ledger.balance.draws;
  const Instant ends = draws.last + ledger::between_draws;
  if (picture.now >= ends) return {};
  const Litres usual = ledger::draw_usual(*picture.room.vat, draws);
  if (draws.litres <= usual) return {};
  const double minutes = seconds(draws.last - draws.began) / 60;
  return {Verdict::on,
          {Why::drawn_unusual,
           no_subject,
           {static_cast<float>(draws.litres.value), static_cast<float>(minutes),
            static_cast<float>(usual.value)}},
          ends};
}

bool applies(const room::Room& room) {
  return room::driving(room) && room.vat &&
         room::find(room, room::Quantity::level, room::Place::vat).has_value();
}

}  // namespace

extern const Rule draw_unusual{
    .id = room::RuleId::draw_unusual,
    .name = "draw_unusual",
    .title = "Unusually much water is drawn",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 10min,
    .on_delay = 0s,
    .off_delay = 0s,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the falls of the vat's smoothed level",
        .limit = "in falls at most 30 min apart, twice the largest draw known (of those over 5 % "
                 "of the vat; it is slowly forgotten), at least 10 % of the vat; before three are "
                 "known, 40 % of it",
        .origin = "our own choice, and this household's own draws",
        .causes = "the tank's top-off has stuck open, a hose was left running, a burst below the "
                  "vat, a larger water change than ever",
        .consequence = "the vat empties into the tank or onto the floor; the tank's salinity falls",
        .action = "Look at the tank: is it running over or its top-off open? Close the tap below "
                  "the vat",
        .automatic =
            "nothing: what draws is not switched by this daemon, whose own transfer is not counted",
        .test = "draw half of the vat at once in a copy of the file and rehearse it"}};

}  // namespace tidewright::rules
