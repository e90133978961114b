#include "core/water/carbonate.hpp"

#include <array>

#include "core/water/resin.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"alkalinity", Unit::milligrams_per_litre, "of the feed, as calcium carbonate", 0, 1000,
           true, by_kit},
    Option{"ph", Unit::none, "pH of the feed, measured at the tap", 5, 8.3, true, by_ph_meter},
    Option{"temperature", Unit::celsius, "temperature of the feed", 0, 50, true, by_thermometer},
    Option{"feed", Unit::ppm, "TDS of the feed: then its ions are allowed for", 0, 4000, false,
           by_solids_meter},
    Option{"rejection", Unit::percent,
           "of hydrogen carbonate by the membrane: then also permeate pH", 0, 99.9}};

// A fair guess of core/water/carbonate.hpp.
constexpr double ionic_strength_per_ppm = 2.5e-5;

Outcome reckon_carbonate(const Inputs& inputs) {
  const double ph = inputs["ph"];
  const MilligramsPerLitre alkalinity{inputs["alkalinity-mg-l"]};
  const auto gas = water::carbon_dioxide(alkalinity, ph, {inputs["temperature-c"]},
                                         ionic_strength_per_ppm * inputs.value_or("feed-ppm", 0));
  if (!gas) return refused(*gas.outside());
  const auto equivalents = water::equivalents_of_alkalinity(alkalinity);
  if (!equivalents) return refused(*equivalents.outside());
  const auto load = water::resin_load({0}, *gas, {0});
  if (!load) return refused(*load.outside());
  Reckoned reckoned{
      {{"carbon_dioxide_mg_l", "carbon dioxide", gas->value, Unit::milligrams_per_litre, 2},
       {"carbon_dioxide_meq_l", "load on the resin", load->anion.value,
        Unit::milliequivalents_per_litre, 4},
       {"alkalinity_meq_l", "alkalinity", equivalents->value, Unit::milliequivalents_per_litre, 3}},
      "carbon dioxide = alkalinity x 10^(pK1 - pH)",
      "Plummer & Busenberg 1982, Geochimica et Cosmochimica Acta 46:1011",
      "a sample in a glass loses its gas within minutes",
      gas.outside()};
  if (inputs.has("rejection-percent")) {
    const auto permeate = water::permeate_ph(ph, inputs["rejection-percent"] / 100);
    if (!permeate) return refused(*permeate.outside());
    reckoned.results.push_back({"permeate_ph", "pH of the permeate", *permeate, Unit::none, 2});
  }
  reckoned.hints.emplace_back(
      "The gas passes every membrane and no ppm meter sees it; the resin must hold all of it.");
  return reckoned;
}

}  // namespace

const Quantity carbonate{
    "carbonate", "Carbon dioxide of the feed, which empties the resin unseen",
    "tidewright reckon carbonate --alkalinity-mg-l 150 --ph 7.2 --temperature-c 12 --feed-ppm 250",
    options, reckon_carbonate};

}  // namespace tidewright::commands::reckon
