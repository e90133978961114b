#include "core/rehearsal/mixing_vat.hpp"

#include <algorithm>
#include <cmath>

namespace tidewright::rehearsal {
namespace {

// To warm a litre of water by a degree: 4,186 J by the calorie's definition (from memory).
constexpr double joules_per_litre_degree = 4186;
// A nearly empty vat is as slow as one with so much in it: its own walls.
constexpr Litres least{2};

}  // namespace

MixingVat::MixingVat(Litres capacity, const MixingSettings& settings, Celsius temperature)
    : vat_(capacity, capacity * settings.begins_filled),
      settings_(settings),
      temperature_(temperature) {}

Litres MixingVat::pour(Litres water, Celsius temperature) {
  const double share = water / (holding() + water + least);
  temperature_.value += (temperature.value - temperature_.value) * share;
  return vat_.pour(water);
}

// One tank of first order: it nears the room's temperature, or what the heater holds above that.
void MixingVat::live(Duration lasting, bool heated, Celsius room) {
  const double heat_capacity = joules_per_litre_degree * (holding() + least).value;
  const double warms = heated && !heater_is_bare() ? settings_.heater.value : 0;
  const double end = room.value + warms * seconds(settings_.cools) / heat_capacity;
  const double left = std::exp(-seconds(lasting) / seconds(settings_.cools));
  temperature_.value = std::min(100.0, end + (temperature_.value - end) * left);
}

}  // namespace tidewright::rehearsal
