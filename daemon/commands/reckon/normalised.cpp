#include <fmt/format.h>

#include <array>

#include "core/water/membrane.hpp"
#include "core/water/normalisation.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"first-temperature", Unit::celsius, "when the membrane was new: of the feed", 1, 45,
           true, by_thermometer},
    Option{"first-feed-pressure", Unit::bar, "before the membrane", 0, 100, true, by_gauge},
    Option{"first-feed", Unit::ppm, "TDS of the feed", 0.1, 60000, true, by_solids_meter},
    Option{"first-permeate", Unit::ppm, "TDS between membrane and resin", 0.1, 60000, true,
           by_solids_meter},
    Option{"first-permeate", Unit::litres_per_hour, "permeate flow", 0.001, 1e6, true,
           by_bucket_and_clock},
    Option{"first-concentrate", Unit::litres_per_hour, "concentrate flow", 0, 1e6, true,
           by_bucket_and_clock},
    Option{"temperature", Unit::celsius, "now: of the feed", 1, 45, true, by_thermometer},
    Option{"feed-pressure", Unit::bar, "before the membrane", 0, 100, true, by_gauge},
    Option{"feed", Unit::ppm, "TDS of the feed", 0.1, 60000, true, by_solids_meter},
    Option{"permeate", Unit::ppm, "TDS between membrane and resin, never behind the resin", 0,
           60000, true, by_solids_meter},
    Option{"permeate", Unit::litres_per_hour, "permeate flow", 0.001, 1e6, true,
           by_bucket_and_clock},
    Option{"concentrate", Unit::litres_per_hour, "concentrate flow", 0, 1e6, true,
           by_bucket_and_clock},
    Option{"first-pressure-drop", Unit::bar, "from feed to concentrate; 0 if left out", 0, 100,
           false, by_gauge},
    Option{"pressure-drop", Unit::bar, "the same now; 0 if left out", 0, 100, false, by_gauge},
    Option{"first-permeate-pressure", Unit::bar, "behind the membrane; 0 if left out", 0, 100,
           false, by_gauge},
    Option{"permeate-pressure", Unit::bar, "the same now; 0 if left out", 0, 100, false, by_gauge}};

// Source: FilmTec Reverse Osmosis Membranes Technical Manual, DuPont, form 45-D01504-en rev. 20,
// section 6.3: clean where flow falls by 10 % or salt passage grows by 5 to 10 %.
constexpr double flow_limit_percent = 10;
constexpr double passage_limit_percent = 10;

struct Advice {
  const char* found;
  const char* remedy;
};

// What raises or lowers which of the two: same manual, table 44. That a household replaces what
// cleaning does not bring back is common practice.
Advice advice(double flow_percent, double passage_percent) {
  const bool more_salt = passage_percent >= passage_limit_percent;
  if (flow_percent <= -flow_limit_percent) {
    return {more_salt ? "less water and more salt: scale or dirt lies on the membrane"
                      : "less water, no more salt: slime or dirt on the membrane, or it is pressed "
                        "together",
            "clean it, or replace it if that does not bring the flow back"};
  }
  if (more_salt && flow_percent >= flow_limit_percent) {
    return {"more water and more salt: chlorine has eaten it, or a seal leaks",
            "look at the seals, test for chlorine behind the carbon; then replace the membrane"};
  }
  if (more_salt) {
    return {"more salt, as much water", "look at the seals and clean it; replace it if that fails"};
  }
  if (flow_percent >= flow_limit_percent) {
    return {"more water, no more salt", "read again: one of the readings is likely wrong"};
  }
  return {"as when it was new", "nothing"};
}

// `when` is "first-" or nothing.
water::Answer<water::MembraneConditions> conditions(const Inputs& inputs, const std::string& when) {
  const auto recovery =
      water::recovery({inputs[when + "permeate-l-h"]}, {inputs[when + "concentrate-l-h"]});
  if (!recovery) return *recovery.outside();
  return water::MembraneConditions{{inputs[when + "feed-pressure-bar"]},
                                   {inputs.value_or(when + "pressure-drop-bar", 0)},
                                   {inputs.value_or(when + "permeate-pressure-bar", 0)},
                                   {inputs[when + "feed-ppm"]},
                                   *recovery,
                                   {inputs[when + "temperature-c"]}};
}

Outcome reckon_normalised(const Inputs& inputs) {
  const auto first = conditions(inputs, "first-");
  if (!first) return refused(*first.outside());
  const auto now = conditions(inputs, "");
  if (!now) return refused(*now.outside());
  const auto flow = water::flow_at({inputs["permeate-l-h"]}, *now, *first);
  if (!flow) return refused(*flow.outside());
  const double first_permeate = inputs["first-permeate-ppm"];
  const auto permeate =
      water::permeate_at({inputs["permeate-ppm"]}, *now, {first_permeate}, *first);
  if (!permeate) return refused(*permeate.outside());
  const double flow_percent = 100 * (flow->value / inputs["first-permeate-l-h"] - 1);
  const double passage_percent = 100 * (permeate->value / first_permeate - 1);
  const Advice advised = advice(flow_percent, passage_percent);
  Reckoned reckoned{
      {{"normalised_flow_l_h", "flow, as if it were day one", flow->value, Unit::litres_per_hour,
        2},
       {"flow_change_percent", "against day one", flow_percent, Unit::percent, 1},
       {"normalised_permeate_ppm", "permeate, as if it were day one", permeate->value, Unit::ppm,
        2},
       {"salt_passage_change_percent", "salt passage against day one", passage_percent,
        Unit::percent, 1},
       {"found", "found", std::string(advised.found)},
       {"to_do", "what to do", std::string(advised.remedy)}},
      "flow x (driving pressure first / now) x (temperature factor first / now); permeate x "
      "(driving pressure now / first) x (mean feed side first / now)",
      std::string(membrane_source) +
          ", equations 72 and 78; cleaning at 10 % less flow or 10 % more salt passage: its "
          "section 6.3",
      "the temperature factor of other membranes differs by up to 10 % between 10 and 25 °C; days "
      "of like temperature compare best",
      flow.outside()};
  reckoned.hints.emplace_back(
      "Read both when the water has run for five minutes or more, the first after a day's use. A "
      "change smaller than its ± says nothing.");
  reckoned.cautions.emplace_back(pressure_in_housings);
  reckoned.cautions.emplace_back(
      "Cleaners burn: gloves and glasses. Never acid and bleach together: the gas is poison. "
      "Bleach destroys the membrane. Rinse to the drain until the permeate reads as before.");
  return reckoned;
}

}  // namespace

const Quantity normalised{
    "normalised", "A membrane against the day it was new: clean it, replace it, or leave it",
    "tidewright reckon normalised --first-temperature-c 25 --first-feed-pressure-bar 5 "
    "--first-feed-ppm 300 --first-permeate-ppm 6 --first-permeate-l-h 12 --first-concentrate-l-h "
    "36 --temperature-c 10 --feed-pressure-bar 5 --feed-ppm 300 --permeate-ppm 6 --permeate-l-h 7 "
    "--concentrate-l-h 32",
    options, reckon_normalised};

}  // namespace tidewright::commands::reckon
