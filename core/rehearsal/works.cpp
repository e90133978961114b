#include "core/rehearsal/works.hpp"

#include <cmath>

namespace tidewright::rehearsal {
namespace {

// A purifier that fills nothing still needs a place for its water.
Litres capacity(const room::Room& room) { return room.vat ? room.vat->capacity : Litres{200}; }

MembraneSettings fitted(MembraneSettings membrane, const room::Room& room) {
  if (room.purifier) membrane.rated = room.purifier->rated;
  return membrane;
}

}  // namespace

Works::Works(const room::Room& room, const WorksSettings& settings)
    : feed(settings.feed),
      settings_(settings),
      vat_(capacity(room), capacity(room) * settings.begins_filled),
      membrane_(fitted(settings.membrane, room)),
      canisters_{Canister{settings.canister_capacity_mg}, Canister{settings.canister_capacity_mg}} {
  float_valve.closes_at = capacity(room) * settings.float_closes_at;
  float_valve.opens_at = capacity(room) * settings.float_opens_at;
}

void Works::live(Duration lasting, const Driven& driven, Celsius temperature) {
  pressed_ = (driven.open || feed_valve_stuck) && !feed_shut;
  float_valve.feel(vat_.holding());
  const bool passes = pressed_ && !float_valve.closed;
  const bool blocked = !passes && !pressure_switch_stuck;  // the pressure switch has opened
  pump_turns_ = driven.pump && !pump_broken && !blocked;
  flow_ = passes ? membrane_.flow(pump_turns_, feed, temperature) : LitresPerHour{0};

  const PartsPerMillion permeate = membrane_.permeate(flow_, feed);
  const Litres made{flow_.value * hours(lasting)};
  const PartsPerMillion between = canisters_[0].outlet(permeate);
  canisters_[0].take(made, permeate);
  canisters_[1].take(made, between);
  membrane_.live(lasting, flow_, feed);

  // Standing pipes give off a few ppm within hours and are flushed within a minute (no source).
  const double end = flow_.value > 0 ? 0 : 5;
  const double constant = flow_.value > 0 ? 30 : 4 * 3600;
  stagnant_.value = end + (stagnant_.value - end) * std::exp(-seconds(lasting) / constant);

  const Litres lost{pressed_ ? burst.value * hours(lasting) : 0};
  spill(vat_.pour(made) + lost);
  vat_.draw(Litres{loss.value * hours(lasting)});
  const double recovery = membrane_.settings().recovery;
  tally_.made += made;
  tally_.burst += lost;
  tally_.wasted += made * ((1 - recovery) / recovery);
  if (pump_turns_) tally_.pumping += lasting;
}

void Works::draw(Litres wanted) {
  const Litres taken = vat_.draw(wanted);
  tally_.drawn += taken;
  tally_.missed += wanted - taken;
}

void Works::spill(Litres water) {
  floor_ += water;
  tally_.spilled += water;
}

void Works::rotate_canisters() {
  canisters_[0] = canisters_[1];
  canisters_[1] = Canister{settings_.canister_capacity_mg};
}

void Works::replace_canisters() { canisters_.fill(Canister{settings_.canister_capacity_mg}); }

void Works::spend_resin() {
  for (Canister& canister : canisters_) canister.spend();
}

LitresPerHour Works::flow_at(room::Place place) const {
  const double recovery = membrane_.settings().recovery;
  if (place == room::Place::product) return flow_;
  if (place == room::Place::concentrate) return flow_ * ((1 - recovery) / recovery);
  return flow_ / recovery + (pressed_ ? burst : LitresPerHour{0});
}

Litres Works::passed(room::Place place) const {
  if (place == room::Place::product) return tally_.made;
  if (place == room::Place::concentrate) return tally_.wasted;
  return tally_.made + tally_.wasted + tally_.burst;
}

PartsPerMillion Works::solids(room::Place place) const {
  const PartsPerMillion permeate = membrane_.permeate(flow_, feed);
  const PartsPerMillion lead_outlet = canisters_[0].outlet(permeate);
  switch (place) {
    case room::Place::permeate:
      return permeate;
    case room::Place::lead_outlet:
      return lead_outlet + stagnant_;
    case room::Place::product:
      return canisters_[1].outlet(lead_outlet) + stagnant_;
    case room::Place::concentrate: {
      const double recovery = membrane_.settings().recovery;
      return (feed - permeate * recovery) / (1 - recovery);
    }
    default:
      return feed;
  }
}

}  // namespace tidewright::rehearsal
