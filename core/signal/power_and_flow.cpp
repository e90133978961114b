#include "core/signal/power_and_flow.hpp"

#include <algorithm>

#include "core/signal/quality.hpp"
#include "core/signal/ruling.hpp"
#include "core/signal/water_meter.hpp"

namespace tidewright::signal {
namespace {

using namespace std::chrono_literals;

constexpr Duration at_odds_for = 5min;  // longer than a pressure switch or a start takes [choice]

}  // namespace

void compare_power_with_flow(const Beside& beside, state::Signals& signals,
                             state::Comparison& comparison, Wake& wake) {
  const room::Room& room = beside.room;
  const Instant now = beside.circumstances.now;
  const auto driving = room::driving(room);
  if (!driving) return;
  const auto power = room::find(room, room::Quantity::power, *driving);
  // A count with coarse steps does not show in minutes whether water flows.
  const auto flow = ruling(room, signals, room::Quantity::flow, room::Place::product);
  if (!power || !flow) return;
  const state::Signal& watts = signals[*power];
  const state::Signal& litres_per_hour = signals[*flow];
  if (!is_sound(watts) || !is_sound(litres_per_hour)) {
    comparison.at_odds = never;
    return;
  }
  const bool draws = watts.value >= room.actuators[*driving].idle_below.value;
  const bool flows = litres_per_hour.value >= least_flow(room, room.instruments[*flow]).value;
  if (!draws || flows) {
    comparison.at_odds = never;
    trust_all_like(room, signals, *power, Why::power_without_flow);
    trust_all_like(room, signals, *flow, Why::power_without_flow);
    return;
  }
  comparison.at_odds = std::min(comparison.at_odds, now);
  if (now - comparison.at_odds < at_odds_for) return wake.by(comparison.at_odds + at_odds_for);
  const double drawn = watts.value;
  const double flowing = litres_per_hour.value;
  doubt_all_like(room, signals, *power, Why::power_without_flow, *flow, drawn, flowing, now);
  doubt_all_like(room, signals, *flow, Why::power_without_flow, *power, drawn, flowing, now);
}

}  // namespace tidewright::signal
