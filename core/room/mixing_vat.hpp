// The vat in which salt water is mixed, and its marks: low < stop_at < brim, where given.
#pragma once

#include <optional>

#include "core/base/units.hpp"

namespace tidewright::room {

struct MixingVat {
  Litres capacity;                // to the brim
  std::optional<Litres> low;      // below: no heater, no mixing pump
  std::optional<Litres> stop_at;  // here every transfer into it ends
};

}  // namespace tidewright::room
