#include <fmt/format.h>

#include <array>
#include <cmath>

#include "core/water/blend.hpp"
#include "core/water/dilution.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/parameters.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr double most = 1e6;

constexpr std::array options{
    Option{"tank", Unit::litres, "all the water, with that of the sump", 0.001, most, true,
           by_marks},
    Option{"change", Unit::litres, "changed each time; or, with --days, each day", 0.001, most,
           true, by_marks},
    Option{"times", Unit::none, "how many changes", 0, 1e5},
    Option{"days", Unit::none, "instead: so many days of a change that never stops", 0, 1e5},
    Option{"now", Unit::none, "what there is before, such as nitrate, in any unit", 0, most, false,
           by_kit},
    Option{"new", Unit::none, "of the same in the new water; 0 if left out", 0, most, false,
           by_kit},
    Option{"gain-per-change", Unit::none, "what comes before each change (or each day)", -most,
           most, false, by_kit},
    Option{"target", Unit::none, "also: how many changes (or days) bring it to this", 0, most},
    Option{"parameters", Unit::text,
           "instead of --now: several, NAME=NOW,NEW,GAIN with a blank between them"},
    Option{"tank-practical-salinity", Unit::none,
           "of the tank: then also what may be changed at once", 0, 45, false, by_probe},
    Option{"new-practical-salinity", Unit::none, "of the new water; the tank's if left out", 0, 45,
           false, by_probe},
    Option{"tank-temperature", Unit::celsius, "of the tank; 25 °C if left out", 0, 40, false,
           by_thermometer},
    Option{"new-temperature", Unit::celsius, "of the new water; the tank's if left out", 0, 40,
           false, by_thermometer},
    Option{"limit-practical-salinity", Unit::none, "that one change may move; 1 if left out", 0.01,
           45},
    Option{"limit-kelvin", Unit::none, "that one change may move, in °C; 1 if left out", 0.01, 40}};

// One thing in the water, changed at once or all day.
struct Course {
  double now;
  double incoming;
  double gain;
  double fraction;
  bool continuous;
  double duration;  // changes, or days

  water::BatchChanges batch() const { return {now, incoming, fraction, gain}; }
  water::ContinuousChange flow() const { return {now, incoming, fraction, gain}; }

  water::Answer<double> after() const {
    return continuous ? water::after_days(flow(), duration)
                      : water::after_changes(batch(), duration);
  }
  water::Answer<double> steady() const {
    return continuous ? water::steady(flow()) : water::steady_after_change(batch());
  }
  water::Answer<double> needed(double target) const {
    return continuous ? water::days_needed(flow(), target) : water::changes_needed(batch(), target);
  }
};

// Adds `after` and `steady`, with `_name` behind them if there is a name; or says why not.
std::optional<Refusal> add(const Course& course, const std::string& name, Reckoned& reckoned) {
  const auto after = course.after();
  if (!after) return refused(*after.outside());
  const auto steady = course.steady();
  if (!steady) return refused(*steady.outside());
  const std::string key = name.empty() ? "" : "_" + name;
  const std::string label = name.empty() ? "" : name + " ";
  reckoned.results.push_back({"after" + key, label + "after", *after, Unit::none, 4});
  reckoned.results.push_back({"steady" + key, label + "in the long run", *steady, Unit::none, 4});
  return std::nullopt;
}

std::optional<Refusal> add_needed(const Course& course, double target, Reckoned& reckoned) {
  const auto needed = course.needed(target);
  if (!needed) {
    Refusal refusal = refused(*needed.outside());
    refusal.where = "--target";
    refusal.remedy = "It is never reached: change more, or lower what comes in between.";
    return refusal;
  }
  if (course.continuous) {
    reckoned.results.push_back({"days_needed", "days to the target", *needed, Unit::days, 2});
  } else {
    reckoned.results.push_back(
        {"changes_needed", "changes to the target", std::ceil(*needed - 1e-9), Unit::none, 0});
  }
  return std::nullopt;
}

std::optional<Refusal> add_gentle(const Inputs& inputs, Reckoned& reckoned) {
  const double salinity = inputs["tank-practical-salinity"];
  const double temperature = inputs.value_or("tank-temperature-c", 25);
  const water::Body tank{{inputs["tank-l"]}, {salinity}, {temperature}};
  const water::Body fresh{tank.volume,
                          {inputs.value_or("new-practical-salinity", salinity)},
                          {inputs.value_or("new-temperature-c", temperature)}};
  const Litres taken{inputs["change-l"]};
  const auto after = water::exchange(tank, taken, fresh);
  if (!after) return refused(*after.outside());
  const water::ShockLimits limits{{inputs.value_or("limit-practical-salinity", 1)},
                                  {inputs.value_or("limit-kelvin", 1)}};
  const auto gentle = water::gentle_exchange(tank, fresh, limits);
  if (!gentle) return refused(*gentle.outside());
  reckoned.results.push_back({"practical_salinity_after_one", "salinity after one change",
                              after->salinity.value, Unit::none, 3});
  reckoned.results.push_back({"temperature_after_one_c", "temperature after one change",
                              after->temperature.value, Unit::celsius, 2});
  reckoned.results.push_back(
      {"gentle_change_l", "at most at once", gentle->value, Unit::litres, 2});
  if (taken > *gentle) {
    reckoned.cautions.push_back(fmt::format(
        "So much at once is a shock: change at most {:.4g} L at a time, or bring the new "
        "water nearer to the tank's.",
        gentle->value));
  }
  return std::nullopt;
}

std::optional<Refusal> add_all(const Inputs& inputs, Course course, Reckoned& reckoned) {
  if (inputs.has("now")) {
    course.now = inputs["now"];
    if (auto refusal = add(course, "", reckoned)) return refusal;
    if (inputs.has("target")) {
      if (auto refusal = add_needed(course, inputs["target"], reckoned)) return refusal;
    }
  }
  if (inputs.has("parameters")) {
    const auto parameters = read_parameters(inputs.text_or("parameters", ""));
    if (const auto* refusal = std::get_if<Refusal>(&parameters)) return *refusal;
    for (const Parameter& one : std::get<std::vector<Parameter>>(parameters)) {
      course.now = one.now;
      course.incoming = one.incoming;
      course.gain = one.gain;
      if (auto refusal = add(course, one.name, reckoned)) return refusal;
    }
  }
  if (inputs.has("tank-practical-salinity")) return add_gentle(inputs, reckoned);
  return std::nullopt;
}

Outcome reckon_change(const Inputs& inputs) {
  const bool continuous = inputs.has("days");
  if (continuous == inputs.has("times")) {
    return missing("--times or --days", "one of the two",
                   fmt::format("Type one, as here: {}", change.example));
  }
  if (!inputs.has("now") && !inputs.has("parameters")) {
    return missing("--now or --parameters", "what there is in the water",
                   fmt::format("Type it, as here: {}", change.example));
  }
  if (!continuous && inputs["change-l"] > inputs["tank-l"]) {
    return refused({{"--change-l", "L", 0.001, inputs["tank-l"]}, inputs["change-l"]});
  }
  const Course course{0,
                      inputs.value_or("new", 0),
                      inputs.value_or("gain-per-change", 0),
                      inputs["change-l"] / inputs["tank-l"],
                      continuous,
                      inputs[continuous ? "days" : "times"]};
  Reckoned reckoned{{},
                    continuous
                        ? "C = steady + (C0 - steady) exp(-q days), steady = new + gain / q"
                        : "C = steady + (C0 - steady) (1 - x)^n, steady = new + gain (1 - x) "
                          "/ x; x: the changed share",
                    "the geometric series, and its limit",
                    "exact where it is well mixed"};
  if (const auto refusal = add_all(inputs, course, reckoned)) return *refusal;
  reckoned.cautions.emplace_back(mains_and_water);
  return reckoned;
}

}  // namespace

const Quantity change{"change", "What water changes do to what is dissolved, and to the animals",
                      "tidewright reckon change --tank-l 400 --change-l 40 --times 4 --now 40",
                      options, reckon_change};

}  // namespace tidewright::commands::reckon
