#include <fmt/format.h>

#include <array>

#include "core/water/correction.hpp"
#include "core/water/uncertainty.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"volume", Unit::litres, "seawater that there is", 0.001, 1e6, true},
    tank_temperature,
    Option{"from-practical-salinity", Unit::none, "practical salinity that it has", 0, 70, true},
    Option{"to-practical-salinity", Unit::none, "practical salinity that it shall have", 0, 70,
           true},
    Option{"vat", Unit::litres, "what the vat holds; left out, there is room for all", 0.001, 1e6},
    Option{"water-fraction", Unit::none, "of the salt as sold, 0.05 if left out", 0, 0.5},
    Option{"salinity-uncertainty", Unit::none,
           "standard uncertainty of your measured salinity, 0.34 if left out", 0, 10}};

// Standard uncertainty of a conductivity probe of 1 %: instrument.hpp.
constexpr double usual_uncertainty = 0.34;

using Part = double (*)(const water::Correction&);

struct Problem {
  water::Body body;
  PracticalSalinity target;
  double water_fraction;
  std::optional<Litres> vat;
  double salinity_uncertainty;

  // Expanded, of one part of the answer, by the litres to 1 % and the measured salinity.
  std::optional<double> sure(Part part) const {
    const auto answer = [&](const std::array<double, 2>& in) -> std::optional<double> {
      const water::Body moved{{in[0]}, {in[1]}, body.temperature};
      const auto found = water::correction(moved, target, water_fraction);
      // Beyond the target this part is not wanted at all: the other side says how steep it is.
      return found && part(*found) > 0 ? std::optional(part(*found)) : std::nullopt;
    };
    const auto one = water::standard_uncertainty<2>(
        answer, {water::Estimate{body.volume.value, body.volume.value * water::rectangular(0.01)},
                 water::Estimate{body.salinity.value, salinity_uncertainty}});
    return one ? std::optional(water::coverage_factor * *one) : std::nullopt;
  }
};

double salt_g(const water::Correction& steps) { return 1000 * steps.salt.value; }
double fresh_l(const water::Correction& steps) { return steps.fresh.value; }
double drain_l(const water::Correction& steps) { return steps.drain.value; }

std::vector<Result> steps_of(const water::Correction& steps, const Problem& problem) {
  std::vector<Result> results;
  const bool drains = steps.drain.value > 0;
  if (drains) results.push_back({"drain_l", "drain first", drain_l(steps), Unit::litres, 3});
  if (steps.fresh.value > 0) {
    results.push_back({drains ? "refill_l" : "add_water_l",
                       drains ? "refill with pure water" : "add pure water", fresh_l(steps),
                       Unit::litres, 3, drains ? std::nullopt : problem.sure(fresh_l)});
  }
  if (steps.salt.value > 0) {
    results.push_back({"add_salt_g", "add salt", salt_g(steps), Unit::grams, 2,
                       drains ? std::nullopt : problem.sure(salt_g)});
  }
  if (results.empty()) results.push_back({"add_salt_g", "add salt", 0.0, Unit::grams, 1});
  results.push_back({"final_volume_l", "then there are", steps.finished.value, Unit::litres, 3});
  return results;
}

Outcome reckon_correct(const Inputs& inputs) {
  const Problem problem{
      {{inputs["volume-l"]}, {inputs["from-practical-salinity"]}, {inputs["temperature-c"]}},
      {inputs["to-practical-salinity"]},
      inputs.value_or("water-fraction", water::common_water_fraction),
      inputs.has("vat-l") ? std::optional(Litres{inputs["vat-l"]}) : std::nullopt,
      inputs.value_or("salinity-uncertainty", usual_uncertainty)};
  const auto steps =
      water::correction(problem.body, problem.target, problem.water_fraction, problem.vat);
  if (!steps) return refused(*steps.outside());
  Reckoned reckoned{
      steps_of(*steps, problem),
      "salt = mass (s2 - s1) / (1 - w - s2); water = mass (S1 / S2 - 1); exchanged at "
      "one volume: kept = mass at the end x S2 / S1",
      std::string(mass_balance_source),
      fmt::format("± is k = 2, about 95 %: litres to 1 %, the measured salinity to "
                  "{:.2g} (k = 1)",
                  problem.salinity_uncertainty),
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
