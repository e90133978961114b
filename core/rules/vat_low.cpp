// Little pure water is left for the tank. No water is harm too.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

constexpr double days_left = 3;
constexpr double deadband = 0.03;  // of the vat

Judgement judge(const picture::Picture& picture) {
  if (!picture.room.vat) return {};
  if (!picture.level) return {Verdict::unknown, {}};
  const room::Vat& vat = *picture.room.vat;
  const Litres limit = std::max(vat.low.value_or(Litres{0}), days_left * vat.top_off_per_day);
  const bool active = picture.findings[room::RuleId::vat_low].active;
  const Litres ends = active ? limit + deadband * vat.capacity : limit;
  if (*picture.level >= ends) return {};
  const double days = vat.top_off_per_day.value > 0 ? *picture.level / vat.top_off_per_day : 0;
  return {Verdict::on,
          {Why::level_below,
           no_subject,
           {static_cast<float>(picture.level->value), static_cast<float>(ends.value),
            static_cast<float>(days)}},
          never};
}

bool applies(const room::Room& room) {
  return room.vat && (room.vat->low || room.vat->top_off_per_day.value > 0) &&
         room::find(room, room::Quantity::level, room::Place::vat).has_value();
}

}  // namespace

extern const Rule vat_low{
    .id = room::RuleId::vat_low,
    .name = "vat_low",
    .title = "Little pure water is left",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 24h,
    .on_delay = 10s,
    .off_delay = 10s,
    .applies = applies,
    .judge = judge,
    .record = {.source = "the vat's gauge",
               .limit = "the level below the low mark of the file, or below three days of top-off",
               .origin = "the household's choice; the three days are our own",
               .deadband = "3 % of the vat",
               .causes = "production is stopped or too slow, or much water was drawn",
               .consequence = "top-off ends and the tank's salinity climbs",
               .action = "See why no water is made and make some; have water at hand for the tank",
               .automatic = "a fill begins by itself below START where nothing forbids it",
               .test = "set the low mark above the level in a copy of the file and rehearse it"}};

}  // namespace tidewright::rules
