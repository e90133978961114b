// The room or the feed is hotter than membranes and stored water stand well.
#include "core/rules/warmth.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  if (!picture.room.purifier) return {};
  return judge_warmth(picture, room::RuleId::room_hot, picture.room.purifier->hot_above,
                      Beyond::above, Why::too_warm);
}

}  // namespace

extern const Rule room_hot{
    .id = room::RuleId::room_hot,
    .name = "room_hot",
    .title = "It is hot in the water room",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = 48h,
    .on_delay = 10min,
    .off_delay = 10min,
    .applies = warmth_is_measured,
    .judge = judge,
    .record = {.source = "the thermometers of the room and of the feed water",
               .limit = "over 35 °C, or the file's hot_above",
               .origin = "common practice, no source: membranes are sold for 35 to 45 °C at most",
               .deadband = "0.5 °C",
               .causes =
                   "a summer under the roof, a heater left on, pumps in a closed cupboard, sun on "
                   "the feed pipe",
               .consequence = "the membrane lets more through and ages; germs grow in the vat",
               .action = "Let air in, shade the pipes and the vat, look for a heater that is on",
               .automatic = "nothing: water is made as before",
               .test = "put the thermometer into water of 40 °C for 15 min: the alarm must come"}};

}  // namespace tidewright::rules
