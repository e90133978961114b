#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "core/water/cautions.hpp"
#include "core/water/lead_lag.hpp"
#include "daemon/commands/reckon/canister_readings.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

// Sharpness until two readings have given it; litres by those two: core/water/breakthrough.hpp.
constexpr Known by_guess{0.15};
constexpr Known by_meter_readings{0.05};

constexpr std::array options{
    Option{"permeate", Unit::ppm, "TDS between membrane and resin", 0.01, 2000, true,
           by_solids_meter},
    Option{"lead-outlet", Unit::ppm, "TDS between the two canisters", 0, 2000, true,
           by_solids_meter},
    Option{"product", Unit::ppm, "TDS behind both", 0, 2000, true, by_solids_meter},
    Option{"step",
           Unit::ppm,
           "smallest step that the meter shows; 1 if left out",
           0.001,
           10,
           false,
           {},
           1},
    Option{"turn",
           Unit::percent,
           "rotate where the lead outlet has this of the permeate; 50 if left out",
           1,
           95,
           false,
           {},
           50},
    Option{"limit",
           Unit::ppm,
           "product that is no longer good enough; 1 if left out",
           0.001,
           2000,
           false,
           {},
           1},
    Option{"half", Unit::litres,
           "litres at which a fresh canister lets half through: then also litres left", 0.1, 1e9,
           false, by_meter_readings},
    Option{"sharpness", Unit::none,
           "half / spread, both of `reckon resin` with two readings; 10 if left out", 3, 300, false,
           by_guess, 10}};

std::string at_least(const char* label, bool seen) {
  return fmt::format("{}{}", label, seen ? "" : ", at least");
}

// The lag by its own reading if the meter can see that, and never above what the lead's reading
// allows for a lag that was fresh.
water::Answer<water::CanistersLeft> left_now(const CanisterReadings& now, double sharpness) {
  const auto by_readings = water::canisters_left(sharpness, now.lead, now.product);
  const auto fresh = water::fresh_lag_left(sharpness, now.lead);
  if (!by_readings || !fresh) return by_readings ? *fresh.outside() : *by_readings.outside();
  const double lag = now.product_seen ? std::min(by_readings->lag, *fresh) : *fresh;
  return water::CanistersLeft{by_readings->lead, lag};
}

std::optional<Refusal> add_litres(const Inputs& inputs, const CanisterReadings& now,
                                  const water::CanistersLeft& left, Reckoned& reckoned) {
  const double half = inputs["half-l"];
  const double permeate = inputs["permeate-ppm"];
  const double limit = inputs["limit-ppm"];
  if (limit < 0.001 * permeate || limit > 0.99 * permeate) {
    return refused({{"--limit-ppm", "ppm", 0.001 * permeate, 0.99 * permeate}, limit});
  }
  const double sharpness = inputs["sharpness"];
  const auto turn = water::run_of(sharpness, left.lead, inputs["turn-percent"] / 100);
  const auto end = water::run_of(sharpness, left.lead + left.lag, limit / permeate);
  if (!turn) return refused(*turn.outside());
  if (!end) return refused(*end.outside());
  reckoned.results.push_back({"litres_to_rotation", at_least("litres until then", now.lead_seen),
                              *turn * half, Unit::litres, 0});
  reckoned.results.push_back(
      {"litres_to_limit", "product at its limit after", *end * half, Unit::litres, 0});
  return std::nullopt;
}

// Resin of which so little is left is worth no place behind a fresh one: judgement.
constexpr double spent = 0.05;

std::string to_do(const Inputs& inputs, const CanisterReadings& now,
                  const water::CanistersLeft& left) {
  if (left.lead < spent && left.lag < spent) return "both are spent: change both";
  const double turn = inputs["turn-percent"];
  if (inputs["product-ppm"] >= inputs["limit-ppm"]) {
    return "rotate now, and let the product run to the drain until it is good again";
  }
  if (100 * now.lead >= turn) return "rotate now: lead out, lag to its place, a fresh one behind";
  return fmt::format("nothing; rotate when the lead outlet reads {:.3g} ppm",
                     turn / 100 * inputs["permeate-ppm"]);
}

Outcome reckon_rotation(const Inputs& inputs) {
  const auto read = canister_readings(inputs);
  if (const auto* refusal = std::get_if<Refusal>(&read)) return *refusal;
  const CanisterReadings& now = std::get<CanisterReadings>(read);
  const auto left = left_now(now, inputs["sharpness"]);
  if (!left) return refused(*left.outside());
  Reckoned reckoned{
      {{"lead_left_percent", at_least("the lead has left", now.lead_seen), 100 * left->lead,
        Unit::percent, 1},
       {"lag_left_percent", at_least("the lag has left", now.product_seen), 100 * left->lag,
        Unit::percent, 1},
       {"to_do", "what to do", to_do(inputs, now, *left)}},
      "left = ln(permeate / behind) / sharpness; a lag that was fresh: 1 - ln(1 / (1 - lead outlet "
      "/ permeate)) / sharpness",
      "Bohart & Adams 1920, J. Am. Chem. Soc. 42:523; for used beds Amundson 1948, J. Phys. "
      "Colloid Chem. 52:1153 (both from memory; checked by numerical integration); to rotate at "
      "half is common practice",
      "the formula is of one ion; of a mixed bed the sharpness is a guess until two readings gave "
      "it"};
  if (inputs.has("half-l")) {
    if (auto refusal = add_litres(inputs, now, *left, reckoned)) return *refusal;
  }
  if (!now.lead_seen) {
    reckoned.hints.emplace_back(
        "The lead outlet reads nothing yet, and the lead may be fresh or half spent: count its "
        "litres with `reckon resin`.");
  }
  reckoned.hints.emplace_back(
      "Carbonic acid and silica pass before these readings rise: on water with much of them rotate "
      "by the litres of `reckon resin`, if those end first.");
  reckoned.hints.emplace_back(
      "The lag is taken as fresh when it was put there: never a used canister behind a fresh one.");
  warn_of("The product", water::pure_water_cautions, reckoned);
  reckoned.cautions.emplace_back(pressure_in_housings);
  return reckoned;
}

}  // namespace

const Quantity rotation{"rotation",
                        "Two resin canisters, lead and lag: what each has left, when to rotate",
                        "tidewright reckon rotation --permeate-ppm 12 --lead-outlet-ppm 4 "
                        "--product-ppm 0 --half-l 3000",
                        options, reckon_rotation};

}  // namespace tidewright::commands::reckon
