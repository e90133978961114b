#include <fmt/format.h>

#include <array>

#include "core/water/cautions.hpp"
#include "core/water/meter_display.hpp"
#include "core/water/uncertainty.hpp"
#include "daemon/commands/reckon/fresh_water.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    solids_factor,
    Option{"step",
           Unit::ppm,
           "of the display, from one number to the next; 1 if left out",
           0.1,
           10,
           false,
           {},
           1},
    Option{"display", Unit::text,
           "what it does between two steps: rounds or cuts; cuts if left out, the worse"}};

// Of conductivity: expanded, k = 2 (meter_display.hpp). And what salt adds to it: 126.45 S cm2/eq
// at 25 °C (ionic_conductance.hpp), 58.443 g/mol.
constexpr double conductivity_uncertainty = 0.02;
constexpr double us_cm_per_mg_l = 126.45 / 58.443;

Outcome reckon_zero(const Inputs& inputs) {
  const auto factor = typed_factor(inputs);
  if (const auto* refusal = std::get_if<Refusal>(&factor)) return *refusal;
  const std::string display = inputs.text_or("display", "cuts");
  if (display != "rounds" && display != "cuts") {
    return unknown("--display", fmt::format("`{}`", display), "what it does between two steps",
                   "rounds, cuts", "Leave it out if you do not know.");
  }
  const water::MeterDisplay meter{inputs["step-ppm"], display == "rounds",
                                  std::get<water::SolidsScale>(factor)};
  const auto behind = water::behind_zero(meter);
  if (!behind) return refused(*behind.outside());
  Reckoned reckoned{
      {{"conductivity_us_cm", "it shows 0 below", behind->conductivity.value,
        Unit::microsiemens_per_cm, 3},
       {"sodium_chloride_mg_l", "salt it may hide, at most", behind->sodium_chloride.value,
        Unit::milligrams_per_litre, 5,
        conductivity_uncertainty * behind->conductivity.value / us_cm_per_mg_l},
       {"resistivity_megohm_cm", "resistivity, at least", behind->megohm_cm, Unit::megohm_cm, 3},
       {"reagent_water", "reagent water, by ASTM D1193", reagent_water(behind->conductivity)}},
      "conductivity = hidden step / factor; salt: conductivity of water with a trace of sodium "
      "chloride, solved for the trace; resistivity = 1 / conductivity; all at 25 °C",
      "arithmetic; limiting conductances: Robinson & Stokes 1965, Electrolyte Solutions; ASTM "
      "D1193-99e1",
      "for a meter that is set right; what salt adds to conductivity is known to 2 %"};
  if (!inputs.has("display")) {
    reckoned.hints.emplace_back(
        "Whether a meter rounds or cuts off is seldom told: this is for one that cuts off. One "
        "that rounds shows 0 below half of that.");
  }
  reckoned.hints.emplace_back(
      "Pure water has 0.055 µS/cm, 18.2 MΩ·cm. Standing in air it takes up carbon dioxide, and "
      "comes to about 1 µS/cm by that alone.");
  reckoned.hints.emplace_back(reagent_water_hint);
  warn_of("Water that shows 0 ppm", water::pure_water_cautions, reckoned);
  return reckoned;
}

}  // namespace

const Quantity zero{"zero", "What \"0 ppm\" on a meter can mean",
                    "tidewright reckon zero --factor 0.5 --step-ppm 1", options, reckon_zero};

}  // namespace tidewright::commands::reckon
