#include "core/ledger/flow.hpp"

#include "core/signal/ruling.hpp"
#include "core/water/membrane_temperature.hpp"

namespace tidewright::ledger {

WaterTemperature water_temperature(const room::Room& room, const state::Signals& signals) {
  for (const room::Place place : {room::Place::feed, room::Place::room}) {
    const auto i = signal::ruling(room, signals, room::Quantity::temperature, place);
    if (i && signals[*i].quality == Quality::good) return {Celsius{signals[*i].value}, true};
  }
  return {};
}

LitresPerHour flow_expected(const room::Room& room, Celsius temperature) {
  if (!room.purifier) return LitresPerHour{0};
  const water::Answer<double> factor = water::temperature_factor(temperature);
  return factor ? room.purifier->rated * *factor : LitresPerHour{0};
}

}  // namespace tidewright::ledger
