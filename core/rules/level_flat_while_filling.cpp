// The purifier runs and the gauge does not move, although the slowest credible flow should have
// moved it three times.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

// A whole-percent gauge on 500 L moves once in 43 min at 7 L/h: one step's time is no fault, three
// are. Never under 20 min, so that a fine gauge does not alarm while the flow comes up.
Duration flat_longest(const picture::Picture& picture, double step) {
  const double step_hours = step / picture.flow_lowest.value;
  return std::max<Duration>(20min, Duration{static_cast<Duration::rep>(3 * step_hours * 3.6e6)});
}

Judgement judge(const picture::Picture& picture) {
  const auto level = room::find(picture.room, room::Quantity::level, room::Place::vat);
  const state::Fill& fill = picture.ledger.fill;
  if (!level || !fill.under_way || !picture.commanded) return {};
  if (picture.flow_lowest.value <= 0) return {};
  const Duration allowed = flat_longest(picture, picture.room.instruments[*level].step);
  if (fill.flat < allowed) return {Verdict::off, {}, picture.now + (allowed - fill.flat)};
  return {Verdict::on,
          {Why::level_flat,
           no_subject,
           {static_cast<float>(seconds(fill.flat) / 60),
            static_cast<float>(picture.level_doubtful.value_or(Litres{}).value)}},
          never};
}

bool applies(const room::Room& room) {
  return room.purifier && room.purifier->driven_by < room.actuators.size() &&
         room::find(room, room::Quantity::level, room::Place::vat).has_value();
}

}  // namespace

extern const Rule level_flat_while_filling{
    .id = room::RuleId::level_flat_while_filling,
    .name = "level_flat_while_filling",
    .title = "The vat does not fill",
    .priority = Priority::soon,
    .latching = Latching::on_repeat,
    .respond_within = 24h,
    .on_delay = 0s,
    .off_delay = 10min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the vat's gauge, while the pump runs",
        .limit = "no rise for 3 times the time that one step of the gauge takes at the lowest "
                 "credible flow, at least 20 min of running",
        .origin = "our own choice, reckoned from the gauge's step and the flow at this temperature",
        .causes = "a stuck gauge, a closed feed cock, a hose beside the vat, a clogged filter, a "
                  "burst pipe",
        .consequence = "water runs somewhere else, or the vat runs over behind a stuck gauge",
        .action = "Look into the vat: does water come in, and does the gauge move by hand? Check "
                  "the feed cock and the hoses",
        .automatic = "the fill stops; it is tried again, and stays off after the third time in "
                     "24 h",
        .test = "close the feed cock in a fill: the alarm must come"}};

}  // namespace tidewright::rules
