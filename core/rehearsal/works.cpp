#include "core/rehearsal/works.hpp"

#include <cmath>

namespace tidewright::rehearsal {
namespace {

// A purifier that fills nothing still needs a place for its water.
Litres capacity(const room::Room& room) { return room.vat ? room.vat->capacity : Litres{200}; }

LitresPerHour flow_of(const room::Room& room, room::Role role, LitresPerHour usual) {
  const auto i = room::find(room, role);
  return i ? room.actuators[*i].flow.value_or(usual) : usual;
}

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
  if (room.mixing_vat) mixing_.emplace(room.mixing_vat->capacity, settings.mixing, Celsius{20});
  settings_.transfer = flow_of(room, room::Role::transfer_pump, settings.transfer);
  settings_.flush = flow_of(room, room::Role::flush_valve, settings.flush);
}

void Works::live(Duration lasting, const Driven& driven, Celsius temperature) {
  pressed_ = (driven.open || feed_valve_stuck) && !feed_shut;
  float_valve.feel(vat_.holding());
  rinsed_ = pressed_ && driven.flushes;
  const bool way_out = driven.diverts || (driven.fill_open && !float_valve.closed);
  const bool passes = pressed_ && way_out && !rinsed_;
  const bool blocked = !passes && !rinsed_ && !pressure_switch_stuck;  // its switch has opened
  pump_turns_ = driven.pump && !pump_broken && !blocked;
  flow_ = passes ? membrane_.flow(pump_turns_, feed, temperature) : LitresPerHour{0};
  make(lasting, driven);

  // Standing pipes give off a few ppm within hours and are flushed within a minute (no source).
  const double end = flow_.value > 0 ? 0 : 5;
  const double constant = flow_.value > 0 ? 30 : 4 * 3600;
  stagnant_.value = end + (stagnant_.value - end) * std::exp(-seconds(lasting) / constant);

  const Litres lost{pressed_ ? burst.value * hours(lasting) : 0};
  spill(lost);
  vat_.draw(Litres{loss.value * hours(lasting)});
  tally_.burst += lost;
  if (pump_turns_) tally_.pumping += lasting;
  if (driven.transfers) transfer(lasting, temperature);
  if (mixing_) mixing_->live(lasting, driven.heats, temperature);
}

void Works::make(Duration lasting, const Driven& driven) {
  const PartsPerMillion permeate = membrane_.permeate(flow_, feed);
  const Litres made{flow_.value * hours(lasting)};
  const PartsPerMillion between = canisters_[0].outlet(permeate);
  canisters_[0].take(made, permeate);
  canisters_[1].take(made, between);
  membrane_.live(lasting, flow_, feed);
  if (driven.diverts) {
    tally_.diverted += made;
  } else {
    spill(vat_.pour(made));
  }
  tally_.made += made;
  tally_.wasted += Litres{flow_at(room::Place::concentrate).value * hours(lasting)};
}

void Works::transfer(Duration lasting, Celsius temperature) {
  const Litres moved = vat_.draw(Litres{settings_.transfer.value * hours(lasting)});
  tally_.transferred += moved;
  if (mixing_) spill(mixing_->pour(moved, temperature));
}

void Works::draw_mixed(Litres wanted) {
  if (mixing_) mixing_->draw(wanted);
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
  const LitresPerHour refused = rinsed_ ? settings_.flush : flow_ * ((1 - recovery) / recovery);
  if (place == room::Place::concentrate) return refused;
  return flow_ + refused + (pressed_ ? burst : LitresPerHour{0});
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
