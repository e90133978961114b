// The first resin canister will be spent soon: time to have fresh resin in the house.
#include "core/picture/resin.hpp"
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

constexpr double used_nearly = 0.9;
constexpr double deadband_days = 2;

Judgement judge(const picture::Picture& picture) {
  const auto forecast = picture::resin_forecast(picture.room, picture.ledger, picture.now);
  if (!forecast) return {};
  const bool active = picture.findings[room::RuleId::resin_near_end].active;
  const double told_before = hours(picture.room.purifier->resin_told_before) / 24;
  const auto left = static_cast<float>(forecast->left.value);
  if (forecast->days && *forecast->days < told_before + (active ? deadband_days : 0)) {
    return {Verdict::on,
            {Why::resin_ends_soon, no_subject, {left, static_cast<float>(*forecast->days)}},
            never};
  }
  if (forecast->used < used_nearly) return {};
  return {Verdict::on,
          {Why::resin_nearly_used, no_subject, {left, static_cast<float>(100 * forecast->used)}},
          never};
}

bool applies(const room::Room& room) {
  return room::driving(room) && room.purifier->lead_resin &&
         room::find(room, room::Quantity::dissolved_solids, room::Place::permeate).has_value();
}

}  // namespace

extern const Rule resin_near_end{
    .id = room::RuleId::resin_near_end,
    .name = "resin_near_end",
    .title = "The resin will be spent soon",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = std::chrono::days{7},
    .on_delay = 10min,
    .off_delay = 10min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the litres made since `rotated` or `replaced` was told, each with what the "
                  "permeate meter showed, and the file's litres of resin and carbon dioxide",
        .limit = "14 days left, or the file's resin_told_before; or nine tenths used",
        .origin = "our own choice: resin is ordered within a week; capacities of mixed resin are "
                  "common practice, good to a quarter",
        .deadband = "2 days",
        .causes = "the resin has held what the membrane let through: that is its work",
        .consequence = "the product water rises above zero and salts come into the vat",
        .action = "Order mixed resin now. Rotate the canisters when it is there: the second moves "
                  "to the front, fresh resin goes in last; then tell `rotated`",
        .automatic = "nothing: water is made as before, and the product meter watches the end",
        .test = "compare the day with the day on which the water between the canisters rises"}};

}  // namespace tidewright::rules
