#include <array>
#include <optional>

#include "core/water/correction.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"volume", Unit::litres, "seawater that there is", 0.001, 1e6, true, by_marks},
    tank_temperature,
    Option{"from-practical-salinity", Unit::none, "practical salinity that it has", 0, 70, true,
           by_probe},
    Option{"to-practical-salinity", Unit::none, "practical salinity that it shall have", 0, 70,
           true},
    Option{"vat", Unit::litres, "what the vat holds; left out, there is room for all", 0.001, 1e6},
    water_fraction};

std::vector<Result> steps_of(const water::Correction& steps) {
  std::vector<Result> results;
  const bool drains = steps.drain.value > 0;
  if (drains) results.push_back({"drain_l", "drain first", steps.drain.value, Unit::litres, 3});
  if (steps.fresh.value > 0) {
    results.push_back({drains ? "refill_l" : "add_water_l",
                       drains ? "refill with pure water" : "add pure water", steps.fresh.value,
                       Unit::litres, 3});
  }
  if (steps.salt.value > 0) {
    results.push_back({"add_salt_g", "add salt", 1000 * steps.salt.value, Unit::grams, 2});
  }
  if (results.empty()) results.push_back({"add_salt_g", "add salt", 0.0, Unit::grams, 1});
  results.push_back({"final_volume_l", "then there are", steps.finished.value, Unit::litres, 3});
  return results;
}

Outcome reckon_correct(const Inputs& inputs) {
  const water::Body body{
      {inputs["volume-l"]}, {inputs["from-practical-salinity"]}, {inputs["temperature-c"]}};
  const auto vat = inputs.has("vat-l") ? std::optional(Litres{inputs["vat-l"]}) : std::nullopt;
  const auto steps =
      water::correction(body, {inputs["to-practical-salinity"]}, inputs["water-fraction"], vat);
  if (!steps) return refused(*steps.outside());
  Reckoned reckoned{steps_of(*steps),
                    "salt = mass (s2 - s1) / (1 - w - s2); water = mass (S1 / S2 - 1); exchanged "
                    "at one volume: kept = mass at the end x S2 / S1",
                    std::string(mass_balance_source), "the balance itself is exact",
                    steps.outside()};
  reckoned.hints.emplace_back("Do half of it, let it mix, and measure again.");
  reckoned.cautions = {
      "Correct the batch in the vat, not the tank with animals in it: they bear about 1 a day.",
      std::string(not_for_drinking), std::string(mains_and_water)};
  return reckoned;
}

}  // namespace

const Quantity correct{
    "correct", "What brings a batch to its salinity: salt, pure water, or drain and refill",
    "tidewright reckon correct --volume-l 100 --temperature-c 25 --from-practical-salinity 37 "
    "--to-practical-salinity 35 --vat-l 100",
    options, reckon_correct};

}  // namespace tidewright::commands::reckon
