#include <array>

#include "core/water/seawater.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"practical-salinity", Unit::none, "practical salinity; 0 is pure water", 0, 70, true},
    water_temperature};

Outcome reckon_density(const Inputs& inputs) {
  const auto density =
      water::density(PracticalSalinity{inputs["practical-salinity"]}, {inputs["temperature-c"]});
  if (!density) return refused(*density.outside());
  return Reckoned{
      {{"density_kg_m3", "density", density->value, Unit::kilograms_per_cubic_metre, 4, 0.008}},
      "the slope with pressure of the Gibbs function of seawater, at one atmosphere",
      std::string(density_source),
      "± is k = 2, about 95 %, of the formula, for salt of the reference composition",
      density.outside()};
}

}  // namespace

const Quantity density{"density", "Density of seawater, or of pure water",
                       "tidewright reckon density --practical-salinity 35 --temperature-c 25",
                       options, reckon_density};

}  // namespace tidewright::commands::reckon
