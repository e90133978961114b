// The room or the feed is near freezing: nothing starts, and pipes and membrane may burst.
#include "core/rules/warmth.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  if (!picture.room.purifier) return {};
  return judge_warmth(picture, room::RuleId::frost, picture.room.purifier->frost_below,
                      Beyond::below, Why::frost);
}

}  // namespace

extern const Rule frost{
    .id = room::RuleId::frost,
    .name = "frost",
    .title = "The water room is near freezing",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 4h,
    .on_delay = 2min,
    .off_delay = 2min,
    .applies = warmth_is_measured,
    .judge = judge,
    .record = {
        .source = "the thermometers of the room and of the feed water",
        .limit = "under 4 °C, or the file's frost_below",
        .origin = "our own choice: water widens below 4 °C, and a pipe by the wall is colder than "
                  "the room",
        .deadband = "0.5 °C",
        .causes = "a failed heating, an open window, a hard winter",
        .consequence = "pipes, membrane and housings burst, and the room is flooded when it thaws",
        .action = "Heat the room. If you cannot, close the feed cock and drain pipes, filter "
                  "housings and membrane",
        .automatic = "nothing starts until it is warmer; a fill under way goes on, for running "
                     "water freezes last",
        .test = "put the thermometer into ice water for 5 min: the alarm must come"}};

}  // namespace tidewright::rules
