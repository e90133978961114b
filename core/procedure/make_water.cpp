#include "core/procedure/make_water.hpp"

#include "core/base/mutant.hpp"
#include "core/procedure/asked.hpp"
#include "core/procedure/full.hpp"

namespace tidewright::procedure {
namespace {

using namespace std::chrono_literals;
using state::Demand;
using state::MakeWater;

// A float switch has no band: after it said full, the next fill by the clock waits so long.
constexpr Duration between_fills_by_the_clock = 12h;

void set(MakeWater& water, Demand demand, const Reason& why, Instant now) {
  water = {.demand = demand, .why = why, .since = now};
}

void end_when_due(const picture::Picture& picture, MakeWater& water, Wake& wake) {
  const Instant now = picture.now;
  const auto trip = held_by_latch(picture);
  if (trip && water.demand != Demand::halted) return set(water, Demand::halted, *trip, now);
  if (water.demand == Demand::none) return;
  if (!picture.driving) {
    return set(water, Demand::none, {Why::nothing_to_drive, no_subject, {}}, now);
  }
  if (state::asks_for_water(water.demand)) {
    if (const auto reason = full(picture)) return set(water, Demand::none, *reason, now);
  }
  if (mutant(Mutant::pause_ends_demand) && picture.drives[*picture.driving].held) {
    return set(water, Demand::none, {Why::no_demand, no_subject, {}}, now);
  }
  if (now >= water.until && !mutant(Mutant::run_never_ends)) {
    const auto minutes = static_cast<float>(seconds(now - water.since) / 60);
    return set(water, Demand::none, {Why::time_is_up, no_subject, {minutes}}, now);
  }
  wake.by(water.until);
}

// Below START by the gauge; or, with a float switch only, in the hours that the file allows.
std::optional<Reason> reason_to_begin(const picture::Picture& picture, const MakeWater& water) {
  const auto& start_below = picture.room.vat->start_below;
  if (picture.level && start_below) {
    if (*picture.level >= *start_below) return std::nullopt;
    return Reason{
        Why::below_start,
        no_subject,
        {static_cast<float>(picture.level->value), static_cast<float>(start_below->value)}};
  }
  const auto float_switch =
      room::find(picture.room, room::Quantity::float_switch, room::Place::vat);
  const bool by_the_clock =
      !start_below && picture.room.purifier->start_hours && float_switch &&
      picture.signals[*float_switch].quality == Quality::good && !picture.float_full &&
      (water.since == long_ago || picture.now - water.since >= between_fills_by_the_clock);
  if (!by_the_clock) return std::nullopt;
  return Reason{Why::in_hours, *float_switch, {}};
}

void begin_when_due(const picture::Picture& picture, MakeWater& water, Wake& wake) {
  if (water.demand != Demand::none || !picture.driving || !picture.room.vat) return;
  const auto reason = reason_to_begin(picture, water);
  if (!reason) {
    if (water.why.why == Why::outside_hours) water.why = {Why::no_demand, no_subject, {}};
    return;
  }
  const auto& start_hours = picture.room.purifier->start_hours;
  const Duration of_day = time_of_day(picture.now, picture.circumstances.wall);
  if (start_hours && !start_hours->hold(of_day)) {
    water.why = {Why::outside_hours, no_subject, {}};
    return wake.by(picture.now + 1min);
  }
  set(water, Demand::standing, *reason, picture.now);
}

}  // namespace

void make_water(const picture::Picture& picture, const Event& event, MakeWater& water,
                Effects& effects, Wake& wake) {
  take_ask(picture, event, water, effects);
  end_when_due(picture, water, wake);
  begin_when_due(picture, water, wake);
  water.wants_water = state::asks_for_water(water.demand);
}

}  // namespace tidewright::procedure
