#include "core/water/membrane.hpp"

#include <fmt/format.h>

#include <array>

#include "core/water/cautions.hpp"
#include "core/water/membrane_temperature.hpp"
#include "core/water/osmosis.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"feed", Unit::ppm, "TDS of the feed, before the membrane", 0.001, 60000, true,
           by_solids_meter},
    Option{"permeate", Unit::ppm, "TDS between membrane and resin, never behind the resin", 0,
           60000, true, by_solids_meter},
    Option{"permeate", Unit::litres_per_hour, "permeate flow", 0.001, 1e5, true,
           by_bucket_and_clock},
    Option{"concentrate", Unit::litres_per_hour, "concentrate flow", 0, 1e5, true,
           by_bucket_and_clock},
    Option{"temperature", Unit::celsius, "temperature of the feed", 1, 45, true, by_thermometer},
    Option{"feed-pressure", Unit::bar, "before the membrane: then also the pressure that is left",
           0, 100, false, by_gauge},
    Option{"permeate-pressure", Unit::bar, "behind the membrane; 0 if left out", 0, 100, false,
           by_gauge}};

// The balance and the temperature, from numbers that were found to be in range.
struct Found {
  water::Answer<double> rejection;
  water::Answer<double> recovery;
  water::Answer<double> factor;
};

std::optional<Refusal> add_concentrate(const Found& found, const Inputs& inputs,
                                       Reckoned& reckoned) {
  const double feed = inputs["feed-ppm"];
  const auto concentration = water::concentration_factor(*found.recovery, *found.rejection);
  if (!concentration) return refused(*concentration.outside());
  reckoned.results.push_back(
      {"concentration_factor", "concentrate / feed", *concentration, Unit::none, 3});
  reckoned.results.push_back(
      {"concentrate_ppm", "concentrate", *concentration * feed, Unit::ppm, 1});
  const Celsius temperature{inputs["temperature-c"]};
  const auto mean = water::mean_concentration_factor(*found.recovery);
  if (!mean) return refused(*mean.outside());
  const auto osmotic = water::osmotic_pressure({*mean * feed}, temperature);
  if (!osmotic) return refused(*osmotic.outside());
  reckoned.results.push_back(
      {"osmotic_pressure_bar", "osmotic pressure", osmotic->value, Unit::bar, 3});
  if (!inputs.has("feed-pressure-bar")) return std::nullopt;
  const auto left = water::net_driving_pressure({{inputs["feed-pressure-bar"]},
                                                 {0},
                                                 {inputs.value_or("permeate-pressure-bar", 0)},
                                                 {feed},
                                                 *found.recovery,
                                                 temperature});
  if (!left) return refused(*left.outside());
  reckoned.results.push_back(
      {"net_driving_pressure_bar", "pressure that drives", left->value, Unit::bar, 3});
  return std::nullopt;
}

Outcome reckon_membrane(const Inputs& inputs) {
  const LitresPerHour permeate{inputs["permeate-l-h"]};
  const Found found{water::rejection(PartsPerMillion{inputs["feed-ppm"]},
                                     PartsPerMillion{inputs["permeate-ppm"]}),
                    water::recovery(permeate, {inputs["concentrate-l-h"]}),
                    water::temperature_factor({inputs["temperature-c"]})};
  for (const auto* answer : {&found.rejection, &found.recovery, &found.factor}) {
    if (!*answer) return refused(*answer->outside());
  }
  Reckoned reckoned{
      {{"rejection_percent", "rejection", 100 * *found.rejection, Unit::percent, 2},
       {"recovery_percent", "recovery", 100 * *found.recovery, Unit::percent, 2},
       {"temperature_factor", "temperature factor", *found.factor, Unit::none, 4},
       {"flow_at_25c_l_h", "permeate flow at 25 °C", permeate.value / *found.factor,
        Unit::litres_per_hour, 2}},
      "rejection = 1 - permeate / feed; recovery = permeate / (permeate + concentrate); flow at 25 "
      "°C = flow / temperature factor",
      std::string(membrane_source),
      "the temperature factor of other membranes differs by up to 10 % at 10 °C",
      found.rejection.outside() ? found.rejection.outside() : found.factor.outside()};
  if (auto refusal = add_concentrate(found, inputs, reckoned)) return *refusal;
  reckoned.hints.emplace_back(
      "Behind the resin every membrane looks perfect: read the permeate before it, with one meter "
      "for both.");
  warn_of("The permeate", water::pure_water_cautions, reckoned);
  return reckoned;
}

}  // namespace

const Quantity membrane{
    "membrane", "How well a membrane works: rejection, recovery, flow at 25 °C",
    "tidewright reckon membrane --feed-ppm 300 --permeate-ppm 6 --permeate-l-h 12 "
    "--concentrate-l-h 36 --temperature-c 15",
    options, reckon_membrane};

}  // namespace tidewright::commands::reckon
