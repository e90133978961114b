// Water where there must be none: any leak sensor that says wet, at any quality.
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  if (picture.wet) return {Verdict::on, {Why::wet, *picture.wet, {}}};
  if (picture.leak_watch == picture::Watch::none_installed) return {};
  // Dry counts only from live, good sensors.
  return {picture.leak_watch == picture::Watch::good ? Verdict::off : Verdict::unknown, {}};
}

bool applies(const room::Room& room) {
  return room::find(room, room::Quantity::wetness, room::Place::floor).has_value();
}

}  // namespace

extern const Rule leak{
    .id = room::RuleId::leak,
    .name = "leak",
    .title = "Water on the floor",
    .priority = Priority::urgent,
    .latching = Latching::at_once,
    .may_be_shelved = false,
    .respond_within = 30min,
    .on_delay = 0s,
    .off_delay = 10min,  // a drying floor flickers between wet and dry
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the leak sensors",
        .limit = "any leak sensor says wet; one report is enough, at any quality",
        .origin = "our own choice: a flooded room costs more than a false word",
        .causes = "a loose fitting, a burst hose, a vat that runs over, a spill, condensation on a "
                  "cold pipe",
        .consequence = "the room is flooded",
        .action = "Close the feed cock by hand. Find the water and dry the floor and the sensor. "
                  "Then reset the alarm, and start again",
        .automatic = "the pump and every water valve are switched off at once and stay off until "
                     "a person resets",
        .test = "touch the sensor with a wet cloth while the pump runs: it must stop at once "
                "(every 3 months)"}};

}  // namespace tidewright::rules
