#include "core/water/resin.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "core/water/breakthrough.hpp"
#include "core/water/cautions.hpp"
#include "core/water/dissolved_solids.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

// Common practice: the reference constants of core/water/resin.hpp, and how far a canister may be
// from them until it has taught its own.
constexpr Known by_label{0.2};
constexpr Known by_usage{0, 10};
// As `reckon carbonate` gives it.
constexpr Known by_balance{0.25};

constexpr std::array options{
    Option{"resin", Unit::litres, "mixed resin in the canister", 0.01, 10000, true, by_marks},
    Option{"permeate", Unit::microsiemens_per_cm,
           "conductivity between membrane and resin, at 25 °C", 0, 2000, false,
           by_conductivity_meter},
    Option{"permeate", Unit::ppm, "instead: a ppm meter's reading there, of factor 0.5", 0, 1000,
           false, by_solids_meter},
    Option{"carbon-dioxide", Unit::milligrams_per_litre,
           "in the permeate, see `reckon carbonate`; 0 if left out", 0, 500, false, by_balance},
    Option{"silica", Unit::milligrams_per_litre, "in the permeate; 0 if left out", 0, 200, false,
           by_kit},
    Option{"cation", Unit::equivalents_per_litre, "capacity of a litre of mix; 0.7 if left out",
           0.01, 3, false, by_label, 0.7},
    Option{"anion", Unit::equivalents_per_litre, "capacity of a litre of mix; 0.6 if left out",
           0.01, 3, false, by_label, 0.6},
    Option{"utilisation", Unit::percent,
           "what of that is used before the product rises; 80 if left out", 1, 100, false, by_usage,
           80},
    Option{"passed", Unit::litres, "litres that the canister has treated", 0, 1e9, false, by_marks},
    Option{"per-day", Unit::litres, "litres made in a day: then also days", 0.1, 1e6, false,
           by_marks},
    Option{"earlier", Unit::litres, "two readings behind the bed: litres at the first", 0, 1e9,
           false, by_marks},
    Option{"earlier-reads", Unit::percent, "and its reading, in % of the permeate", 1e-4, 99.99,
           false, by_analysis},
    Option{"later", Unit::litres, "litres at the second", 0, 1e9, false, by_marks},
    Option{"later-reads", Unit::percent, "and its reading, in % of the permeate", 1e-4, 99.99,
           false, by_analysis},
    Option{"limit", Unit::percent, "product that ends the bed, in % of the permeate; 1 if left out",
           1e-4, 99.99}};

// Adds what two readings behind the bed say of its end.
std::optional<Refusal> add_curve(const Inputs& inputs, Reckoned& reckoned) {
  for (const char* option :
       {"earlier-l", "earlier-reads-percent", "later-l", "later-reads-percent"}) {
    if (inputs.has(option)) continue;
    return missing(fmt::format("--{}", option), "two readings behind the bed, each with its litres",
                   "Type --earlier-l, --earlier-reads-percent, --later-l, --later-reads-percent.");
  }
  const auto curve =
      water::breakthrough_through({{inputs["earlier-l"]}, inputs["earlier-reads-percent"] / 100},
                                  {{inputs["later-l"]}, inputs["later-reads-percent"] / 100});
  if (!curve) return refused(*curve.outside());
  const auto end = water::litres_to(*curve, inputs.value_or("limit-percent", 1) / 100);
  if (!end) return refused(*end.outside());
  reckoned.results.push_back(
      {"curve_half_l", "half passes at", curve->half.value, Unit::litres, 1});
  reckoned.results.push_back({"curve_spread_l", "spread", curve->spread.value, Unit::litres, 1});
  reckoned.results.push_back(
      {"litres_to_limit", "limit is reached at", end->value, Unit::litres, 1});
  reckoned.formula += "; behind / before = 1 / (1 + exp((half - V) / spread))";
  reckoned.source += "; Bohart & Adams 1920, J. Am. Chem. Soc. 42:523 (from memory)";
  return std::nullopt;
}

Outcome reckon_resin(const Inputs& inputs) {
  const bool by_ppm = inputs.has("permeate-ppm");
  if (by_ppm == inputs.has("permeate-us-cm")) {
    return missing("--permeate-us-cm or --permeate-ppm", "one of the two",
                   fmt::format("Type one, as here: {}", resin.example));
  }
  const auto conductivity =
      by_ppm ? water::conductivity_of_solids({inputs["permeate-ppm"]},
                                             water::SolidsScale::sodium_chloride)
             : water::Answer<MicrosiemensPerCm>(MicrosiemensPerCm{inputs["permeate-us-cm"]});
  if (!conductivity) return refused(*conductivity.outside());
  const auto load = water::resin_load(*conductivity, {inputs.value_or("carbon-dioxide-mg-l", 0)},
                                      {inputs.value_or("silica-mg-l", 0)});
  if (!load) return refused(*load.outside());
  const water::ResinBed bed{{inputs["resin-l"]},
                            inputs["cation-eq-l"],
                            inputs["anion-eq-l"],
                            inputs["utilisation-percent"] / 100};
  const auto run = water::resin_run(bed, *load);
  if (!run) return refused(*run.outside());
  const double passed = inputs.value_or("passed-l", 0);
  const double left = std::max(0.0, run->litres.value - passed);
  const bool anion = run->limited_by == water::ResinSide::anion;
  Reckoned reckoned{
      {{"litres", "a fresh canister treats", run->litres.value, Unit::litres, 0},
       {"litres_left", "litres left", left, Unit::litres, 0},
       {"limited_by", "the side that ends first", std::string(anion ? "anion" : "cation")},
       {"cation_load_meq_l", "cation load", load->cation.value, Unit::milliequivalents_per_litre,
        4},
       {"anion_load_meq_l", "anion load", load->anion.value, Unit::milliequivalents_per_litre, 4}},
      "litres = 1000 x resin x capacity x utilisation / load; load = conductivity / 100 + CO2 / "
      "44.01 + silica / 60.08",
      "Standard Methods 1030 for conductivity / 100; carbon dioxide and silica as one charge; the "
      "usual capacities are common practice",
      "the capacities are nearly all of it, until a first canister has taught you yours",
      load.outside() ? load.outside() : run.outside()};
  if (inputs.has("per-day-l")) {
    reckoned.results.push_back(
        {"days_left", "days left", left / inputs["per-day-l"], Unit::days, 1});
  }
  if (inputs.has("earlier-l") || inputs.has("later-l")) {
    if (auto refusal = add_curve(inputs, reckoned)) return *refusal;
  }
  if (!inputs.has("carbon-dioxide-mg-l")) {
    reckoned.hints.emplace_back(
        "Carbon dioxide was taken as 0. No ppm meter sees it, and it can halve these litres.");
  }
  warn_of("The permeate", water::pure_water_cautions, reckoned);
  return reckoned;
}

}  // namespace

const Quantity resin{"resin", "Litres that a canister of mixed resin treats, and what is left",
                     "tidewright reckon resin --resin-l 1.5 --permeate-us-cm 12 "
                     "--carbon-dioxide-mg-l 5 --passed-l 1000 --per-day-l 100",
                     options, reckon_resin};

}  // namespace tidewright::commands::reckon
