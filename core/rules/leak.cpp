// Water where there must be none: any leak sensor that says wet, at any quality; or flow while
// everything is off and a valve should hold the water.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

// So long without flow, and the loose water has come to rest.
constexpr Duration at_rest_after = 10min;

Reason flowing(const picture::LooseWater& water) {
  return {
      Why::flow_when_off,
      water.meter,
      {static_cast<float>(water.litres.value), static_cast<float>(seconds(water.off_for) / 60)}};
}

Judgement judge(const picture::Picture& picture) {
  using picture::Watch;
  if (picture.wet) return {Verdict::on, {Why::wet, *picture.wet, {}}};
  if (const auto& water = picture.loose_water) {
    const Instant at_rest = water->flowed + at_rest_after;
    if (picture.now < at_rest) return {Verdict::on, flowing(*water), at_rest};
    // A meter that has fallen silent does not prove that the water has.
    const bool good = picture.signals[water->meter].quality == Quality::good;
    if (!good) return {Verdict::unknown, {}};
  }
  if (picture.leak_watch == Watch::none_installed) return {};
  // Dry counts only from live, good sensors.
  return {picture.leak_watch == Watch::good ? Verdict::off : Verdict::unknown, {}};
}

bool has_leak_sensor(const room::Room& room) {
  return room::find(room, room::Quantity::wetness, room::Place::floor).has_value();
}

// Flow with everything off is judged only where a valve stops the water.
bool has_watched_valve(const room::Room& room) {
  if (!room.purifier || room.purifier->water_stops_with != room::WaterStopsWith::valve)
    return false;
  return std::any_of(state::metered_places.begin(), state::metered_places.end(),
                     [&](room::Place place) {
                       return room::find(room, room::Quantity::flow, place) ||
                              room::find(room, room::Quantity::water_count, place);
                     });
}

bool applies(const room::Room& room) { return has_leak_sensor(room) || has_watched_valve(room); }

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
        .source = "the leak sensors, and water meters while everything is off",
        .limit = "any leak sensor says wet: one report is enough, at any quality; or half a litre "
                 "(two steps of a count) flows through a water meter although everything has been "
                 "off for 2 min (only where a valve stops the water)",
        .origin = "our own choice: a flooded room costs more than a false word",
        .causes = "a loose fitting, a burst hose, a vat that runs over, a spill, condensation on a "
                  "cold pipe, a feed valve that does not close",
        .consequence = "the room is flooded",
        .action = "Close the feed cock by hand. Find the water, dry the floor and the sensor. Only "
                  "then reset `leak`; nothing runs before, and `start` begins the fill anew",
        .automatic = "the pump and every water valve are switched off at once and stay off until "
                     "a person resets",
        .test = "touch the sensor with a wet cloth while the pump runs: it must stop at once "
                "(every 3 months)"}};

}  // namespace tidewright::rules
