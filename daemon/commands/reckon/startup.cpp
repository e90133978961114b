#include "core/water/startup.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "core/water/cautions.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

// A reading that falls while one looks at the clock, and a guess until it is learned.
constexpr Known by_clock{0.1};
constexpr Known by_guess{0.5};

constexpr std::array options{
    Option{"start", Unit::ppm, "permeate as the pump starts after the stand", 0, 60000, true,
           by_solids_meter},
    Option{"permeate", Unit::ppm, "permeate as it has settled", 0.1, 60000, true, by_solids_meter},
    Option{"permeate", Unit::litres_per_hour, "permeate flow", 0.01, 1e5, true,
           by_bucket_and_clock},
    Option{"half-way", Unit::minutes,
           "running time until the reading has fallen half way; then the hold-up is yours", 0.001,
           1e4, false, by_clock},
    Option{"hold-up", Unit::litres, "instead: water between membrane and meter; 0.25 if left out",
           0.001, 1000, false, by_guess, 0.25},
    Option{"margin",
           Unit::ppm,
           "how near to the settled reading is near enough; 1 if left out",
           0.001,
           1e5,
           false,
           {},
           1},
    Option{"starts-per-day", Unit::none, "with the litres of a day: then also what the resin sees",
           0, 1000},
    Option{"per-day", Unit::litres, "permeate of a day", 0.1, 1e6, false, by_marks}};

water::Answer<Litres> hold_up(const Inputs& inputs) {
  if (inputs.has("half-way-min")) {
    return water::hold_up_of({inputs["permeate-l-h"]}, inputs["half-way-min"]);
  }
  return Litres{inputs["hold-up-l"]};
}

std::optional<Refusal> add_day(const Inputs& inputs, double excess_mg, Reckoned& reckoned) {
  if (!inputs.has("starts-per-day") || !inputs.has("per-day-l")) {
    return missing("--starts-per-day and --per-day-l", "both: how often, and how much a day",
                   fmt::format("Type both, as here: {}", startup.example));
  }
  const auto load = water::cycle_load(inputs["starts-per-day"], {inputs["per-day-l"]},
                                      {inputs["permeate-ppm"]}, excess_mg);
  if (!load) return refused(*load.outside());
  reckoned.results.push_back(
      {"mean_permeate_ppm", "the resin sees, on average", load->mean.value, Unit::ppm, 2});
  reckoned.results.push_back(
      {"extra_percent", "resin used up faster by", 100 * load->extra, Unit::percent, 1});
  return std::nullopt;
}

Outcome reckon_startup(const Inputs& inputs) {
  const double steady = inputs["permeate-ppm"];
  if (inputs["start-ppm"] < steady) {
    return refused({{"--start-ppm", "ppm", steady, 60000}, inputs["start-ppm"]});
  }
  const auto held = hold_up(inputs);
  if (!held) return refused(*held.outside());
  const water::StartUp run{{inputs["start-ppm"]}, {steady}, {inputs["permeate-l-h"]}, *held};
  const auto minutes = water::minutes_until_within(run, {inputs["margin-ppm"]});
  const auto constant = water::time_constant_minutes(run);
  const auto cost = water::start_up_cost(run);
  if (!minutes) return refused(*minutes.outside());
  if (!constant) return refused(*constant.outside());
  if (!cost) return refused(*cost.outside());
  Reckoned reckoned{
      {{"settled_minutes", "settled after", *minutes, Unit::minutes, 1},
       {"settled_l", "in which it makes", run.flow.value * *minutes / 60, Unit::litres, 2},
       {"judge_after_minutes", "judge no reading before", std::max(5.0, 5 * *constant),
        Unit::minutes, 1},
       {"excess_mg", "extra salt of one start", cost->excess_mg, Unit::milligrams, 1},
       {"equal_l", "which settled permeate has in", cost->equal_litres.value, Unit::litres, 2}},
      "permeate = settled + (start - settled) exp(-t flow / hold-up); extra salt = (start - "
      "settled) x hold-up",
      "first-order wash-out, textbook; that no reading is judged before five minutes is common "
      "practice",
      "exact for water that mixes in the hold-up"};
  if (inputs.has("half-way-min")) {
    reckoned.results.push_back({"hold_up_l", "hold-up found", held->value, Unit::litres, 3});
  } else if (!inputs.has("hold-up-l")) {
    reckoned.hints.emplace_back(
        "The hold-up of 0.25 L is a guess and may be wrong by a factor of 2. Watch the meter after "
        "a start and type --half-way-min: then it is yours.");
  }
  if (inputs.has("starts-per-day") || inputs.has("per-day-l")) {
    if (auto refusal = add_day(inputs, cost->excess_mg, reckoned)) return *refusal;
  }
  reckoned.hints.emplace_back(
      "Few long runs spare the resin; or let these first litres go to the drain, past it.");
  warn_of("The permeate", water::pure_water_cautions, reckoned);
  return reckoned;
}

}  // namespace

const Quantity startup{"startup",
                       "What the first litres after a stand carry to the resin, and for how long",
                       "tidewright reckon startup --start-ppm 200 --permeate-ppm 8 --permeate-l-h "
                       "12 --half-way-min 0.9 --starts-per-day 4 --per-day-l 300",
                       options, reckon_startup};

}  // namespace tidewright::commands::reckon
