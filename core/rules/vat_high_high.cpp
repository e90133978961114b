// The float switch above every other mark: the vat is about to run over.
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  if (picture.high_high_wet) {
    return {Verdict::on, {Why::high_high_wet, *picture.high_high_wet, {}}};
  }
  const auto high_high =
      room::find(picture.room, room::Quantity::float_switch, room::Place::vat_high_high);
  if (!high_high) return {};
  const bool good = picture.signals[*high_high].quality == Quality::good;
  return {good ? Verdict::off : Verdict::unknown, {}};
}

bool applies(const room::Room& room) {
  return room::find(room, room::Quantity::float_switch, room::Place::vat_high_high).has_value();
}

}  // namespace

extern const Rule vat_high_high{
    .id = room::RuleId::vat_high_high,
    .name = "vat_high_high",
    .title = "The vat is about to run over",
    .priority = Priority::urgent,
    .latching = Latching::at_once,
    .respond_within = 5min,
    .on_delay = 1s,  // a wave does not hold a float up for a second
    .off_delay = 10s,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the float switch above every other mark",
        .limit = "the highest float switch of the vat is lifted for 1 s",
        .origin = "our own choice: a wave may lift it for a moment",
        .causes = "the fill did not stop: a valve that leaks, a pump that ignores OFF, a gauge "
                  "that shows too little",
        .consequence = "the vat runs over",
        .action = "Close the feed cock by hand. Take water out of the vat until the float hangs "
                  "free. Find out why the fill did not stop, then reset",
        .automatic = "the pump and every water valve are switched off at once and stay off until "
                     "a person resets",
        .test = "lift the float by hand while the pump runs: it must stop (every 3 months)"}};

}  // namespace tidewright::rules
