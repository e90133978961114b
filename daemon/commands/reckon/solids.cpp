#include <fmt/format.h>

#include <array>

#include "core/report/outside.hpp"
#include "core/water/dissolved_solids.hpp"
#include "core/water/uncertainty.hpp"
#include "daemon/commands/reckon/compensation_law.hpp"
#include "daemon/commands/reckon/fresh_water.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"
#include "daemon/commands/reckon/solids_reading.hpp"

namespace tidewright::commands::reckon {
namespace {

using water::IonMix;

constexpr std::array options{
    Option{"conductivity", Unit::microsiemens_per_cm,
           "raw, as it is at --temperature: the meter does not compensate", 0, 1e5, false,
           by_conductivity_meter},
    Option{"conductivity-at-25", Unit::microsiemens_per_cm,
           "instead: what a meter shows that compensates to 25 °C", 0, 1e5, false,
           by_conductivity_meter},
    Option{"shown", Unit::ppm, "instead: what a ppm meter shows", 0, 1e5, false, by_solids_meter},
    solids_factor,
    Option{"temperature", Unit::celsius, "of the water, with a raw conductivity", 0, 50, false,
           by_thermometer},
    Option{
        "law", Unit::text,
        "to 25 °C: linear, iso-7888, pure-water; left out: pure-water below 1 µS/cm, else linear"},
    percent_per_celsius};

// Pure water's 0.055 at 25 °C, less the 0.003 to which its law is known.
constexpr MicrosiemensPerCm purest{0.052};

// Expanded, k = 2, of the rule of 100 µS/cm for each meq/L: 15 %.
const double rule_uncertainty = water::coverage_factor * water::rectangular(0.15);

// Conductivity at 25 °C, and how it was come by.
// Equivalents per litre: none where ions slow each other too much for the rules to hold, nor where
// the water's own ions count.
void add_equivalents(MicrosiemensPerCm at_25, Reckoned& reckoned) {
  constexpr auto unit = Unit::milliequivalents_per_litre;
  if (at_25 < pure_below) {
    reckoned.hints.emplace_back("No equivalents: below 1 µS/cm the water's own ions count.");
    return;
  }
  const auto natural = water::equivalents(at_25, IonMix::natural_water);
  const auto salt = water::equivalents(at_25, IonMix::sodium_chloride);
  const auto soda = water::equivalents(at_25, IonMix::sodium_bicarbonate);
  if (!natural || !salt || !soda) {
    reckoned.hints.push_back("No equivalents: " + report::words(*natural.outside()) + ".");
    return;
  }
  reckoned.results.push_back({"equivalents_meq_l", "equivalents: natural water", natural->value,
                              unit, 4, rule_uncertainty * natural->value});
  reckoned.results.push_back({"equivalents_sodium_chloride_meq_l",
                              "equivalents: sodium chloride alone", salt->value, unit, 4});
  reckoned.results.push_back({"equivalents_sodium_bicarbonate_meq_l",
                              "equivalents: sodium bicarbonate alone", soda->value, unit, 4});
}

// What ppm meters show: the one that is meant, then those of other factors.
std::optional<Refusal> add_solids(MicrosiemensPerCm at_25, water::SolidsScale meant,
                                  Reckoned& reckoned) {
  const auto solids = water::dissolved_solids(at_25, meant);
  if (!solids) return refused(*solids.outside());
  reckoned.results.push_back({"solids_ppm", fmt::format("ppm meter, factor {}", words(meant)),
                              solids->value, Unit::ppm, 4});
  for (const auto scale : solids_scales) {
    const auto other = water::dissolved_solids(at_25, scale);
    if (scale == meant || !other) continue;
    reckoned.results.push_back({fmt::format("solids_{}_ppm", key(scale)),
                                fmt::format("ppm meter, factor {}", words(scale)), other->value,
                                Unit::ppm, 4});
  }
  return std::nullopt;
}

// Which reagent water it may be: not by ppm, whose last digit hides more than the types differ by.
void add_reagent_water(MicrosiemensPerCm at_25, const Inputs& inputs, Reckoned& reckoned) {
  if (inputs.has("shown-ppm")) {
    reckoned.hints.emplace_back(
        "What a 0 on the display can hide, and what reagent water it may be: `tidewright reckon "
        "zero`.");
    return;
  }
  const std::string types = reagent_water(at_25);
  reckoned.results.push_back({"reagent_water", "reagent water it may be, by ASTM D1193", types});
  if (types != no_reagent_water) reckoned.hints.emplace_back(reagent_water_hint);
  if (at_25 < purest) {
    reckoned.hints.emplace_back(
        "Pure water itself has 0.055 µS/cm: there cannot be less, so that the meter or its "
        "thermometer is wrong.");
  }
}

Outcome reckon_solids(const Inputs& inputs) {
  const auto factor = typed_factor(inputs);
  if (const auto* refusal = std::get_if<Refusal>(&factor)) return *refusal;
  const auto meant = std::get<water::SolidsScale>(factor);
  const auto read = conductivity_at_25(inputs, meant, solids.example);
  if (const auto* refusal = std::get_if<Refusal>(&read)) return *refusal;
  const auto& [at_25, law, remark] = std::get<At25>(read);
  Reckoned reckoned{
      {{"conductivity_at_25c_us_cm", "conductivity at 25 °C", at_25.value,
        Unit::microsiemens_per_cm, 4},
       {"law", "carried to 25 °C", law}},
      "ppm = factor x conductivity at 25 °C; equivalents = conductivity / 100, / 126.45 for sodium "
      "chloride, / 94.6 for sodium bicarbonate",
      "FAO Irrigation and Drainage Paper 29 (0.64); common practice (0.5, 0.7); Standard Methods "
      "1030 and 2510 B; ISO 7888:1985; pure water: Light, Licht, Bevilacqua & Morash 2005, "
      "Electrochem. Solid-State Lett. 8:E16; ASTM D1193-99e1",
      "ppm is what such a meter shows; what is really dissolved in a natural water may be 20 % "
      "more or less (Hem 1985, USGS Water-Supply Paper 2254)",
      remark};
  if (law == pure_water_law) reckoned.sureness += "; pure water's law to 3 %, at least 0.003 µS/cm";
  if (auto refusal = add_solids(at_25, meant, reckoned)) return *refusal;
  add_equivalents(at_25, reckoned);
  if (inputs.has("conductivity-us-cm") && law != pure_water_law &&
      inputs["conductivity-us-cm"] < pure_below.value) {
    reckoned.hints.emplace_back(
        "Below 1 µS/cm pure water's own ions count: by the linear law pure "
        "water of 5 °C comes out at half of what it has. Leave the law out.");
  }
  add_reagent_water(at_25, inputs, reckoned);
  reckoned.hints.emplace_back(
      "Compare readings of meters with one factor only: store the conductivity at 25 °C.");
  reckoned.cautions.emplace_back(
      "A low number does not say that water is fit to drink: it sees no germs, nitrite or lead.");
  return reckoned;
}

}  // namespace

const Quantity solids{
    "solids", "Conductivity and ppm of fresh and pure water, whatever the meter's factor",
    "tidewright reckon solids --conductivity-us-cm 540 --temperature-c 20 --factor 0.5", options,
    reckon_solids};

}  // namespace tidewright::commands::reckon
