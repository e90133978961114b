#include "daemon/commands/reckon/canister_readings.hpp"

#include <algorithm>

namespace tidewright::commands::reckon {

std::variant<CanisterReadings, Refusal> canister_readings(const Inputs& inputs) {
  const double permeate = inputs["permeate-ppm"];
  const double unseen = inputs["step-ppm"] / 2;
  const double lead = inputs["lead-outlet-ppm"];
  const double product = inputs["product-ppm"];
  if (permeate < 4 * unseen) {
    Refusal refusal = refused({{"--permeate-ppm", "ppm", 4 * unseen, 2000}, permeate});
    refusal.remedy =
        "Such a meter cannot tell the canisters apart: type a finer --step-ppm, or count the "
        "litres with `reckon resin`.";
    return refusal;
  }
  if (lead > permeate) return refused({{"--lead-outlet-ppm", "ppm", 0, permeate}, lead});
  if (product > std::max(lead, unseen)) {
    Refusal refusal = refused({{"--product-ppm", "ppm", 0, std::max(lead, unseen)}, product});
    refusal.remedy =
        "The lag only makes water better. Were the probes mixed up? If not, the lag is spent and "
        "gives back: change it.";
    return refusal;
  }
  return CanisterReadings{std::max(lead, unseen) / permeate, std::max(product, unseen) / permeate,
                          lead >= unseen, product >= unseen};
}

}  // namespace tidewright::commands::reckon
