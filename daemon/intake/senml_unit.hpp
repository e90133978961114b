// The units of SenML packs.
#pragma once

#include <optional>
#include <string_view>

#include "core/room/instrument.hpp"

namespace tidewright::intake {

// What one unit of RFC 8428's registry, or of the second one of RFC 8798, means in the quantity's
// own unit: own = shown * factor + offset.
struct SenmlUnit {
  double factor = 1;
  double offset = 0;
};
// `whole`: the litres that a share of one stands for (level only). None if the unit does not fit.
std::optional<SenmlUnit> senml_unit(std::string_view unit, room::Quantity, double whole);

}  // namespace tidewright::intake
