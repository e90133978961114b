// What the purifier should give just now. Ledger and picture read the same figure.
#pragma once

#include "core/base/units.hpp"
#include "core/room/room.hpp"
#include "core/state/signal.hpp"

namespace tidewright::ledger {

// The water's temperature: a good reading of the feed, else of the room, else a cautious 10
// degrees.
struct WaterTemperature {
  Celsius value{10};
  bool known = false;
};
WaterTemperature water_temperature(const room::Room&, const state::Signals&);

// Product flow at that temperature; 0 without a purifier.
LitresPerHour flow_expected(const room::Room&, Celsius);

}  // namespace tidewright::ledger
