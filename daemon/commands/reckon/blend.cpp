#include <array>

#include "core/water/mixture_uncertainty.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"volume", Unit::litres, "of the first water", 0.001, 1e6, true},
    Option{"practical-salinity", Unit::none, "of the first water; 0 is pure", 0, 70, true},
    Option{"temperature", Unit::celsius, "of the first water", 0, 40, true},
    Option{"other-volume", Unit::litres, "of the second water", 0.001, 1e6, true},
    Option{"other-practical-salinity", Unit::none, "of the second water; 0 is pure", 0, 70, true},
    Option{"other-temperature", Unit::celsius, "of the second water", 0, 40, true}};

Outcome reckon_blend(const Inputs& inputs) {
  const water::Body one{
      {inputs["volume-l"]}, {inputs["practical-salinity"]}, {inputs["temperature-c"]}};
  const water::Body other{{inputs["other-volume-l"]},
                          {inputs["other-practical-salinity"]},
                          {inputs["other-temperature-c"]}};
  const auto found = water::blend_estimate(one, other);
  if (!found) return refused(*found.outside());
  const double k = water::coverage_factor;
  return Reckoned{
      {{"practical_salinity", "practical salinity", found->body.salinity.value, Unit::none, 4,
        k * found->salinity_uncertainty.value},
       {"temperature_c", "temperature", found->body.temperature.value, Unit::celsius, 3,
        k * found->temperature_uncertainty.value},
       {"volume_l", "volume", found->body.volume.value, Unit::litres, 3}},
      "salt and enthalpy are shared by mass",
      std::string(mass_balance_source),
      "± is k = 2, about 95 %: litres to 1 %, salinities by a probe to 0.34 (k = 1), temperatures "
      "to 0.5 °C",
      found.outside(),
      {},
      {std::string(mains_and_water)}};
}

}  // namespace

const Quantity blend{
    "blend", "Salinity, temperature and volume of two waters poured together",
    "tidewright reckon blend --volume-l 80 --practical-salinity 35 --temperature-c 25 "
    "--other-volume-l 20 --other-practical-salinity 0 --other-temperature-c 5",
    options, reckon_blend};

}  // namespace tidewright::commands::reckon
