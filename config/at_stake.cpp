#include "config/at_stake.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "config/protection_parts.hpp"
#include "core/report/phrases.hpp"

namespace tidewright::config {
namespace {

using room::Place;
using room::Quantity;

Duration time_for(Litres litres, LitresPerHour flow) {
  return Duration{std::llround(litres.value / flow.value * 3.6e6)};
}

class Stakes {
 public:
  Stakes(const room::Room& room, const room::Actuator& actuator, std::vector<Stake>& into)
      : room_(room), product_(room.purifier->rated), into_(into) {
    if (actuator.lease_kind != room::LeaseKind::none) lease_ = actuator.lease;
  }

  void gather() {
    for (const room::Instrument& instrument : room_.instruments) {
      if (instrument.quantity == Quantity::wetness) leak(instrument);
    }
    if (lease_) add("the daemon or the broker stops while the vat is full", *lease_, product_);
    const auto gauge = room::find(room_, Quantity::level, Place::vat);
    if (gauge && room_.vat->stop_at) overfill(room_.instruments[*gauge]);
  }

 private:
  void add(std::string happening, Duration lasting, LitresPerHour flow) {
    into_.push_back({std::move(happening), lasting, Litres{flow.value * hours(lasting)}});
  }

  // A leak may be before the membrane: there all of the feed water runs.
  void leak(const room::Instrument& sensor) {
    const LitresPerHour feed = product_ * feed_per_product;
    if (lease_)
      add(fmt::format("{} gets wet while OFF is lost on its way", sensor.where), *lease_, feed);
    const Duration silent = sensor.on_change ? sensor.reports_every : room::stale_after(sensor);
    const std::string dead = sensor.on_change
                                 ? "{} gets wet after its sensor has died unnoticed (it speaks on "
                                   "change only)"
                                 : "{} gets wet after its sensor has died";
    add(fmt::format(fmt::runtime(dead), sensor.where), silent + lease_.value_or(Duration{0}), feed);
  }

  // As rules/level_flat_while_filling allows, in warm water: three steps of the gauge at the lowest
  // credible flow, at least 20 minutes.
  void overfill(const room::Instrument& gauge) {
    const Duration at_once = lease_.value_or(Duration{0});
    add("the gauge falls silent near the mark", room::stale_after(gauge) + at_once, product_);
    const LitresPerHour lowest = product_ * room_.purifier->flow_lowest_credible;
    const Duration flat =
        std::max<Duration>(std::chrono::minutes{20}, time_for(Litres{3 * gauge.step}, lowest));
    add("the gauge sticks near the mark", flat + at_once, product_);
  }

  const room::Room& room_;
  LitresPerHour product_;
  std::optional<Duration> lease_;
  std::vector<Stake>& into_;
};

}  // namespace

std::optional<LitresPerHour> flow_at_most(const room::Room& room, room::ActuatorIndex actuator) {
  if (room.actuators[actuator].flow) return room.actuators[actuator].flow;
  if (!room.purifier) return std::nullopt;
  switch (room.actuators[actuator].role) {
    case room::Role::booster_pump:
    case room::Role::feed_valve:
      return room.purifier->rated * feed_per_product;
    case room::Role::fill_valve:
    case room::Role::divert_valve:
      return room.purifier->rated;
    default:
      return std::nullopt;
  }
}

std::vector<Stake> at_stake(const room::Room& room) {
  std::vector<Stake> stakes;
  const auto driven = room::driving(room);
  if (driven) Stakes{room, room.actuators[*driven], stakes}.gather();
  for (std::size_t n = 0; n < room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    const room::Actuator& actuator = room.actuators[n];
    const auto flow = flow_at_most(room, i);
    const bool kept = actuator.lease_kind != room::LeaseKind::none;
    if (i == driven || !facts(actuator.role).moves_water || !kept || !flow) continue;
    stakes.push_back({fmt::format("the daemon or the broker stops while {} is on",
                                  report::actuator_words(room, i)),
                      actuator.lease, Litres{flow->value * hours(actuator.lease)}});
  }
  return stakes;
}

std::vector<Rise> rises(const Household& household) {
  std::vector<Rise> result;
  if (!household.room.purifier) return result;
  for (std::size_t i = 1; i < household.marks.size(); ++i) {
    const Mark& from = household.marks[i - 1];
    const Mark& to = household.marks[i];
    result.push_back({from, to, time_for(to.at - from.at, household.room.purifier->rated)});
  }
  return result;
}

}  // namespace tidewright::config
