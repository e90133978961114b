#include "core/ledger/proof_by_meter.hpp"

#include <cmath>

#include "core/signal/water_meter.hpp"

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;
using room::Place;
using room::Quantity;

constexpr Duration valve_closes_within = 10s;
// A cheap meter and a floating gauge, each with some ten per cent. [choice]
constexpr double share_off = 0.3;
// Fewer steps of the gauge say little: one may be hidden at either end. [choice]
constexpr double steps_that_say_much = 10;

void prove_gauge(const Sources& from, const state::Comparison& comparison, const state::Fill& fill,
                 state::Proofs& proofs) {
  const auto gauge = room::find(from.room, Quantity::level, Place::vat);
  const bool diverted = room::find(from.room, room::Role::divert_valve).has_value();
  if (!gauge || diverted || !signal::water_meter(from.room, from.signals, Place::product)) return;
  const Litres passed = comparison.water[signal::metered(Place::product)].passed;
  state::MeteredFill& metered = proofs.fill;
  if (fill.under_way && !metered.under_way) {
    metered = {.under_way = true, .passed = passed, .gained = fill.gained};
  }
  if (fill.under_way || !metered.under_way) return;
  metered.under_way = false;
  const Litres litres = passed - metered.passed;
  if (litres < Litres{steps_that_say_much * from.room.instruments[*gauge].step}) return;
  const double share = (fill.gained - metered.gained) / litres;
  proofs.gauge = {.at = from.circumstances.now,
                  .passed = std::abs(share - 1) <= share_off,
                  .figure = static_cast<float>(share)};
}

// Once for each time that everything is switched off: by the first reading after the valve's time.
void prove_valve(const Sources& from, const state::Comparison& comparison, state::Proof& valve) {
  const auto& purifier = from.room.purifier;
  const auto meter = room::find(from.room, Quantity::flow, Place::feed);
  if (!purifier || purifier->water_stops_with != room::WaterStopsWith::valve || !meter) return;
  const state::WaterMeter& water = comparison.water[signal::metered(Place::feed)];
  const Instant quiet = comparison.quiet;
  if (quiet == never || valve.at >= quiet || water.heard < quiet + valve_closes_within) return;
  if (from.signals[*meter].quality != Quality::good) return;
  valve = {.at = from.circumstances.now,
           .passed = water.rate < signal::least_flow(from.room, from.room.instruments[*meter]),
           .figure = static_cast<float>(water.rate.value)};
}

}  // namespace

void post_proofs_by_meter(const Sources& from, const Event& event,
                          const state::Comparison& comparison, const state::Fill& fill,
                          state::Proofs& proofs) {
  // What flowed while the daemon was away was not counted.
  if (std::holds_alternative<Started>(event.what)) proofs.fill = {};
  prove_gauge(from, comparison, fill, proofs);
  prove_valve(from, comparison, proofs.valve);
}

}  // namespace tidewright::ledger
