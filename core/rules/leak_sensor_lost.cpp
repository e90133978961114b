// No news from a leak sensor is not a dry floor.
#include "core/rules/lost.hpp"
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  if (!picture.circumstances.link_up) return {Verdict::unknown, {}};  // broker_lost is the cause
  if (picture.leak_watch == picture::Watch::none_installed) return {};
  if (picture.leak_watch == picture::Watch::lost && picture.leak_doubtful) {
    const room::InstrumentIndex sensor = *picture.leak_doubtful;
    return {Verdict::on, {Why::sensor_lost, sensor, {seconds_without(picture, sensor)}}, never};
  }
  for (std::size_t n = 0; n < picture.room.instruments.size(); ++n) {
    if (picture.room.instruments[n].quantity != room::Quantity::wetness) continue;
    if (!came_back(picture, static_cast<room::InstrumentIndex>(n))) return {Verdict::unknown, {}};
  }
  return {};
}

bool applies(const room::Room& room) {
  return room::find(room, room::Quantity::wetness, room::Place::floor).has_value();
}

}  // namespace

extern const Rule leak_sensor_lost{
    .id = room::RuleId::leak_sensor_lost,
    .name = "leak_sensor_lost",
    .title = "A leak sensor is silent",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 24h,
    .on_delay = 0s,  // three missed reports are delay enough
    .off_delay = 2min,
    .consequence_of = room::RuleId::broker_lost,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the leak sensors' reports and their availability topics",
        .limit = "no live report for 3 times its report interval, at least 60 s; an on-change "
                 "sensor: for its check-in time, or its own offline message",
        .origin = "our own choice: three missed reports",
        .causes = "an empty battery, weak radio, a sensor that was carried away",
        .consequence = "a leak would not be noticed",
        .action = "Replace the battery or the sensor, then test it with a wet cloth",
        .automatic = "no water is made without somebody present until the sensor reports again",
        .test = "take the battery out: the alarm must come and the pump must stop"}};

}  // namespace tidewright::rules
