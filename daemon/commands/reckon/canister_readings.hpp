// What `reckon rotation` is told of two canisters, as far as the meter can show it.
#pragma once

#include <variant>

#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

// As fractions of the permeate; a reading below half a step may be anything up to that.
struct CanisterReadings {
  double lead;
  double product;
  bool lead_seen;  // the meter can tell it from 0
  bool product_seen;
};

// From permeate-ppm, lead-outlet-ppm, product-ppm and step-ppm, all required. Refused: a permeate
// of less than two steps, and water that gets worse from one reading to the next.
std::variant<CanisterReadings, Refusal> canister_readings(const Inputs& inputs);

}  // namespace tidewright::commands::reckon
