#include "daemon/commands/reckon/solids_reading.hpp"

#include <fmt/format.h>

#include <array>

#include "core/water/conductivity_compensation.hpp"
#include "core/water/pure_water.hpp"
#include "daemon/commands/reckon/compensation_law.hpp"

namespace tidewright::commands::reckon {
namespace {

std::variant<At25, Refusal> carried_to_25(const Inputs& inputs) {
  const MicrosiemensPerCm raw{inputs["conductivity-us-cm"]};
  if (!inputs.has("temperature-c")) {
    return missing("--temperature-c or --temperature-f", "temperature of the water",
                   "Measure it in the water, or type --conductivity-at-25-us-cm if the meter "
                   "compensates.");
  }
  const Celsius temperature{inputs["temperature-c"]};
  const bool pure = raw < pure_below && !inputs.has("percent-per-celsius");
  const std::string name = inputs.text_or("law", pure ? "pure-water" : "linear");
  if (name == "pure-water") {
    const auto at_25 = water::compensated_pure_water(raw, temperature);
    if (!at_25) return refused(*at_25.outside());
    return At25{*at_25, pure_water_law, at_25.outside()};
  }
  const auto law = law_named(name, inputs);
  if (!law || law->law == water::Compensation::Law::none) {
    return unknown("--law", fmt::format("`{}`", name), "how to carry it to 25 °C",
                   "linear, iso-7888, pure-water", "Type one of these, or leave it out.");
  }
  if (auto refusal = coefficient_without_linear(*law, inputs)) return *refusal;
  const auto factor = water::factor_to_25(*law, temperature);
  if (!factor) return refused(*factor.outside());
  return At25{raw * *factor, words(*law)};
}

}  // namespace

std::variant<At25, Refusal> conductivity_at_25(const Inputs& inputs, water::SolidsScale scale,
                                               const char* example) {
  const int ways = static_cast<int>(inputs.has("conductivity-us-cm")) +
                   static_cast<int>(inputs.has("conductivity-at-25-us-cm")) +
                   static_cast<int>(inputs.has("shown-ppm"));
  if (ways != 1) {
    return unknown("--conductivity-us-cm, --conductivity-at-25-us-cm or --shown-ppm",
                   ways == 0 ? "nothing" : "more than one", "one reading", "",
                   fmt::format("Type one of them, as here: {}", example));
  }
  if (inputs.has("conductivity-us-cm")) return carried_to_25(inputs);
  for (const char* option : {"temperature-c", "law", "percent-per-celsius"}) {
    if (!inputs.has(option)) continue;
    return unknown(fmt::format("--{}", option), "a compensation of what is compensated",
                   "it with a raw conductivity alone", "",
                   "Leave it out; or type --conductivity-us-cm if the meter does not compensate.");
  }
  if (inputs.has("conductivity-at-25-us-cm")) {
    return At25{{inputs["conductivity-at-25-us-cm"]}, "by the meter"};
  }
  const auto found = water::conductivity_of_solids({inputs["shown-ppm"]}, scale);
  if (!found) return refused(*found.outside());
  return At25{*found, "by the meter"};
}

}  // namespace tidewright::commands::reckon
