#include "daemon/commands/reckon/quantities.hpp"

#include <array>

namespace tidewright::commands::reckon {

std::span<const Quantity* const> quantities() {
  static constexpr std::array all{
      &salinity,    &readings,  &gravity,  &density,    &dose,     &correct, &change,    &blend,
      &evaporation, &membrane,  &series,   &normalised, &startup,  &resin,   &rotation,  &solids,
      &zero,        &carbonate, &sediment, &carbon,     &hardness, &vessel,  &irrigation};
  return all;
}

}  // namespace tidewright::commands::reckon
