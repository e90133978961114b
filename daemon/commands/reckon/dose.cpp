#include <fmt/format.h>

#include <array>

#include "core/water/dosing.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"volume", Unit::litres, "pure water that you have", 0.001, 1e6, false, by_marks},
    Option{"finished-volume", Unit::litres, "instead: seawater that you want", 0.001, 1e6, false,
           by_marks},
    tank_temperature,
    Option{"practical-salinity", Unit::none, "practical salinity that you want", 0, 70, true},
    water_fraction};

Outcome reckon_dose(const Inputs& inputs) {
  const bool finished = inputs.has("finished-volume-l");
  if (finished == inputs.has("volume-l")) {
    return missing("--volume-l or --finished-volume-l", "one of the two",
                   fmt::format("Type one, as here: {}", dose.example));
  }
  const Celsius temperature{inputs["temperature-c"]};
  const PracticalSalinity target{inputs["practical-salinity"]};
  const auto make = finished ? water::batch_of_finished : water::batch_of_fresh;
  const auto batch = make({inputs[finished ? "finished-volume-l" : "volume-l"]}, temperature,
                          target, inputs["water-fraction"]);
  if (!batch) return refused(*batch.outside());
  Reckoned reckoned{
      {{"salt_g", "salt", 1000 * batch->salt.value, Unit::grams, 1},
       {"fresh_volume_l", "into pure water", batch->fresh.value, Unit::litres, 2},
       {"final_volume_l", "makes seawater", batch->finished.value, Unit::litres, 2}},
      "salt = water s / (1 - w - s), by mass; s: grams of salt in a gram of seawater, w: water in "
      "the salt",
      std::string(mass_balance_source),
      "the balance itself is exact",
      batch.outside()};
  reckoned.hints.emplace_back(fmt::format("It swells by {:.2f} L: leave that room in the vat.",
                                          (batch->finished - batch->fresh).value));
  if (!inputs.has("water-fraction")) {
    reckoned.hints.emplace_back(
        "No label says how much water the salt holds; 0.05 is common practice. Dose nine tenths, "
        "mix, measure, then `reckon correct`.");
  }
  reckoned.cautions = {std::string(not_for_drinking), std::string(mains_and_water)};
  return reckoned;
}

}  // namespace

const Quantity dose{
    "dose", "How much salt makes pure water into seawater",
    "tidewright reckon dose --volume-l 100 --temperature-c 25 --practical-salinity 35", options,
    reckon_dose};

}  // namespace tidewright::commands::reckon
