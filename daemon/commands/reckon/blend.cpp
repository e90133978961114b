#include "core/water/blend.hpp"

#include <array>

#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"volume", Unit::litres, "of the first water", 0.001, 1e6, true, by_marks},
    Option{"practical-salinity", Unit::none, "of the first water; 0 is pure", 0, 70, true,
           by_probe},
    Option{"temperature", Unit::celsius, "of the first water", 0, 40, true, by_thermometer},
    Option{"other-volume", Unit::litres, "of the second water", 0.001, 1e6, true, by_marks},
    Option{"other-practical-salinity", Unit::none, "of the second water; 0 is pure", 0, 70, true,
           by_probe},
    Option{"other-temperature", Unit::celsius, "of the second water", 0, 40, true, by_thermometer}};

Outcome reckon_blend(const Inputs& inputs) {
  const water::Body one{
      {inputs["volume-l"]}, {inputs["practical-salinity"]}, {inputs["temperature-c"]}};
  const water::Body other{{inputs["other-volume-l"]},
                          {inputs["other-practical-salinity"]},
                          {inputs["other-temperature-c"]}};
  const auto found = water::blend(one, other);
  if (!found) return refused(*found.outside());
  return Reckoned{
      {{"practical_salinity", "practical salinity", found->salinity.value, Unit::none, 4},
       {"temperature_c", "temperature", found->temperature.value, Unit::celsius, 3},
       {"volume_l", "volume", found->volume.value, Unit::litres, 3}},
      "salt and enthalpy are shared by mass",
      std::string(mass_balance_source),
      "nothing is lost to air and walls",
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
