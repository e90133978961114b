#include <fmt/format.h>

#include <array>

#include "core/report/outside.hpp"
#include "daemon/commands/reckon/compensation_law.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/sample_readings.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"practical-salinity", Unit::none, "practical salinity of the water", 0, 55, true},
    Option{"temperature", Unit::celsius, "temperature of the water", 0, 40, true, by_thermometer},
    Option{"scale", Unit::text, "also: what a glass hydrometer of this scale reads, 25/25 ..."},
    percent_per_celsius};

constexpr const char* formula =
    "raw conductivity: the Practical Salinity Scale 1978 solved for it; shown for 25 °C: that x "
    "the law's factor; specific gravity: density / density of pure water, each at the scale's "
    "temperature; glass: density x (1 + 25e-6 (t - t of the scale)) / density of pure water; "
    "index: pure water's + slope x salinity; brine and fluid: the sodium chloride that has this "
    "index at 20 °C";
constexpr const char* source =
    "Perkin & Lewis 1980, IEEE Journal of Oceanic Engineering OE-5:9-16; ISO 7888:1985; TEOS-10: "
    "IOC, SCOR & IAPSO 2010, Manuals and Guides 56; glass: ISO 1768:1975; index: Millard & Seaver "
    "1990, Deep-Sea Research 37(12):1909-1926; brine: CRC Handbook of Chemistry and Physics, 102nd "
    "edition 2021";

Refusal no_such_scale(const std::string& text) {
  return unknown("--scale", fmt::format("`{}`", text),
                 "the two temperatures that are marked on the hydrometer",
                 std::string(water::gravity_scales), "Type one of these, or leave it out.");
}

Outcome reckon_readings(const Inputs& inputs) {
  const Sample sample{{inputs["practical-salinity"]}, {inputs["temperature-c"]}};
  Reckoned reckoned{{},
                    formula,
                    source,
                    "for salt of the reference composition: one on sale differs by some tenths of "
                    "salinity; brine is known to 0.3 g/kg"};
  Sheet sheet;
  if (const auto why = add_conductivity(sample, *law_named("linear", inputs), sheet)) {
    reckoned.hints.push_back("ISO 7888 has no factor here: " + report::words(*why) + ".");
  }
  add_gravities(sample, sheet);
  if (inputs.has("scale")) {
    const std::string text = inputs.text_or("scale", "");
    const auto scale = water::gravity_scale(text);
    if (!scale) return no_such_scale(text);
    add_hydrometer(sample, *scale, sheet);
  } else {
    reckoned.hints.emplace_back(
        "A hydrometer shows its specific gravity in water of its scale's temperature alone; "
        "--scale says what a glass one reads in this water.");
  }
  add_optics(sample, sheet);
  add_density(sample, sheet);
  add_calibration_fluid(sample, sheet);
  reckoned.hints.emplace_back(
      "What a conductivity meter shows for 25 °C is not what seawater has there: `tidewright "
      "reckon salinity` undoes its law.");
  reckoned.hints.emplace_back(
      "The fluid sets the seawater scale of a refractometer and nothing else: its conductivity and "
      "its density are those of another salinity.");
  return sheet.under(std::move(reckoned));
}

}  // namespace

const Quantity readings{
    "readings", "What each instrument should show in water of a salinity and temperature",
    "tidewright reckon readings --practical-salinity 35 --temperature-c 20 --scale 25/25", options,
    reckon_readings};

}  // namespace tidewright::commands::reckon
