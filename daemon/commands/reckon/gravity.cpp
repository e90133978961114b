#include <fmt/format.h>

#include <array>

#include "core/water/specific_gravity.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"practical-salinity", Unit::none, "practical salinity of the water", 0, 70, true},
    Option{"scale", Unit::text, "the hydrometer's scale, as marked on it: 25/25, 60F/60F ..."},
    Option{"temperature", Unit::celsius, "of the sample: then also what a glass hydrometer reads",
           -5, 60, false, by_thermometer}};

// Expanded, k = 2: 4e-6, twice. See core/water/specific_gravity.hpp.
constexpr double formula_uncertainty = 8e-6;

Outcome reckon_gravity(const Inputs& inputs) {
  const std::string text = inputs.text_or("scale", "");
  const auto scale = water::gravity_scale(text);
  if (!scale) {
    return unknown("--scale", text.empty() ? "no scale" : fmt::format("`{}`", text),
                   "the temperatures of sample and water that the gravity is a ratio of",
                   std::string(water::gravity_scales), "Type one of these.");
  }
  const PracticalSalinity salinity{inputs["practical-salinity"]};
  const auto gravity = water::specific_gravity(salinity, *scale);
  if (!gravity) return refused(*gravity.outside());
  Reckoned reckoned{
      {{"specific_gravity", "specific gravity", *gravity, Unit::none, 5, formula_uncertainty},
       {"scale", "scale", std::string(water::text(*scale))}},
      "density of the sample at the first temperature / density of pure water at the "
      "second",
      std::string(density_source),
      "a salt on sale differs from the reference composition by some tenths of "
      "salinity",
      gravity.outside()};
  if (inputs.has("temperature-c")) {
    const auto reading = water::hydrometer_reading(salinity, {inputs["temperature-c"]}, *scale);
    if (!reading) return refused(*reading.outside());
    reckoned.results.push_back(
        {"hydrometer_reading", "a glass hydrometer reads", *reading, Unit::none, 5});
    reckoned.source += "; glass: ISO 1768:1975";
    if (!reckoned.remark) reckoned.remark = reading.outside();
  }
  return reckoned;
}

}  // namespace

const Quantity gravity{"gravity", "Specific gravity of a salinity, on the scale of a hydrometer",
                       "tidewright reckon gravity --practical-salinity 35 --scale 25/25", options,
                       reckon_gravity};

}  // namespace tidewright::commands::reckon
