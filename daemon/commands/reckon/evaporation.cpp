#include "core/water/evaporation.hpp"

#include <fmt/format.h>

#include <array>

#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"volume", Unit::litres, "all the water, before", 0.001, 1e6, true, by_marks},
    tank_temperature,
    Option{"practical-salinity", Unit::none, "practical salinity before", 0, 70, true, by_probe},
    Option{"evaporated", Unit::litres, "litres that evaporated, all in all", 0, 1e9, false,
           by_marks},
    Option{"top-up-practical-salinity", Unit::none,
           "topped up with water of this salinity; left out, not topped up", 0, 70, false,
           by_probe},
    Option{"now-practical-salinity", Unit::none, "instead of --evaporated: what it has come to", 0,
           115, false, by_probe}};

constexpr const char* formula = "S x mass / (mass - evaporated mass): the salt stays";

Outcome litres_gone(const water::Body& before, double now) {
  const auto gone = water::evaporated_until(before, {now});
  if (!gone) return refused(*gone.outside());
  return Reckoned{{{"evaporated_l", "evaporated", gone->value, Unit::litres, 3}},
                  formula,
                  std::string(mass_balance_source),
                  "read by one probe on one day, the two salinities are surer against each other",
                  gone.outside()};
}

Outcome reckon_evaporation(const Inputs& inputs) {
  const water::Body before{
      {inputs["volume-l"]}, {inputs["practical-salinity"]}, {inputs["temperature-c"]}};
  const bool salinity_known = inputs.has("now-practical-salinity");
  if (salinity_known == inputs.has("evaporated-l")) {
    return missing("--evaporated-l or --now-practical-salinity", "one of the two",
                   fmt::format("Type one, as here: {}", evaporation.example));
  }
  if (salinity_known) return litres_gone(before, inputs["now-practical-salinity"]);
  const Litres gone{inputs["evaporated-l"]};
  const bool topped_up = inputs.has("top-up-practical-salinity");
  const double top_up = inputs.value_or("top-up-practical-salinity", 0);
  const auto after = topped_up ? water::after_top_up(before, gone, {top_up})
                               : water::after_evaporation(before, gone);
  if (!after) return refused(*after.outside());
  Reckoned reckoned{
      {{"practical_salinity", "practical salinity", after->salinity.value, Unit::none, 4},
       {"volume_l", "volume", after->volume.value, Unit::litres, 3}},
      formula,
      std::string(mass_balance_source),
      "the balance itself is exact",
      after.outside()};
  if (top_up > 1) {
    reckoned.hints.emplace_back("Only water went: top up with pure water, or the salt adds up.");
  }
  return reckoned;
}

}  // namespace

const Quantity evaporation{
    "evaporation", "What evaporation and topping up do to the salinity",
    "tidewright reckon evaporation --volume-l 400 --temperature-c 25 --practical-salinity 35 "
    "--evaporated-l 4",
    options, reckon_evaporation};

}  // namespace tidewright::commands::reckon
