#include <fmt/format.h>

#include <array>

#include "core/water/instrument.hpp"
#include "core/water/reference_salt.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

using water::Instrument;
using Reads = Instrument::Reads;

// A way to salinity: which option is typed, and what it stands on.
struct Way {
  Reads reads;
  std::string_view option;
  const char* instrument;  // the usual one
  bool needs_temperature;
  const char* formula;
  const char* source;
};

constexpr std::array ways{
    Way{Reads::conductivity, "conductivity-ms-cm", "probe", true,
        "Practical Salinity Scale 1978: a polynomial in the root of C / 42.914 mS/cm",
        "Perkin & Lewis 1980, IEEE Journal of Oceanic Engineering OE-5:9-16; UNESCO Technical "
        "Papers in Marine Science 44"},
    Way{Reads::specific_gravity, "specific-gravity", "hydrometer", true,
        "density = reading x density of pure water / (1 + 25e-6 (t - t of the scale)), then "
        "salinity of that density",
        "TEOS-10: IOC, SCOR & IAPSO 2010, Manuals and Guides 56; glass: ISO 1768:1975"},
    Way{Reads::refractive_index, "refractive-index", "index_refractometer", true,
        "(index - index of pure water) / slope, both at the temperature",
        "Millard & Seaver 1990, Deep-Sea Research 37(12):1909-1926"},
    Way{Reads::brine_scale, "brine-scale-g-kg", "brine_refractometer", false,
        "the salinity whose refractive index at 20 °C is that of so much sodium chloride",
        "CRC Handbook of Chemistry and Physics, 102nd edition 2021; Millard & Seaver 1990, "
        "Deep-Sea "
        "Research 37(12):1909-1926"}};

constexpr std::array options{
    Option{"conductivity", Unit::millisiemens_per_cm,
           "raw conductivity, not one turned into that at 25 °C", 0, 150},
    Option{"specific-gravity", Unit::none, "what a hydrometer reads; needs --scale", 0.9, 1.2},
    Option{"scale", Unit::text, "the hydrometer's scale, as marked on it: 25/25, 60F/60F ..."},
    Option{"refractive-index", Unit::none, "index at the temperature", 1.3, 1.4},
    Option{"brine-scale", Unit::grams_per_kilogram,
           "what a refractometer graduated for brine shows", 0, 60},
    Option{"temperature", Unit::celsius, "temperature of the sample", -5, 60},
    Option{"instrument", Unit::text, "whose uncertainty is meant: probe, calibrated_probe ..."},
    Option{"reading-uncertainty", Unit::none,
           "standard uncertainty of your instrument's reading; of conductivity, as a fraction", 0,
           10}};

std::string names(Reads reads) {
  std::string all;
  for (const Instrument& one : water::instruments()) {
    if (one.reads == reads) all += (all.empty() ? "" : ", ") + std::string(one.name);
  }
  return all;
}

Refusal untagged(const std::string& found, bool given) {
  return unknown(
      "--scale", given ? fmt::format("`{}`", found) : "no scale",
      "the two temperatures that are marked on the hydrometer", std::string(water::gravity_scales),
      "Read the marking. Without it the number means nothing: 1.025 is a salinity of 32.5 "
      "on one scale and of 37.2 on another.");
}

std::variant<const Way*, Refusal> way_of(const Inputs& inputs) {
  const Way* found = nullptr;
  for (const Way& way : ways) {
    if (!inputs.has(way.option)) continue;
    if (found) {
      return unknown(fmt::format("--{}", way.option), "a second reading", "one reading", "",
                     "Reckon each reading by itself, and compare.");
    }
    found = &way;
  }
  if (found) return found;
  return missing(
      "--conductivity-ms-cm, --specific-gravity, --refractive-index or --brine-scale-g-kg",
      "a reading", fmt::format("Type one of them, as here: {}", salinity.example));
}

std::variant<Instrument, Refusal> instrument_of(const Way& way, const Inputs& inputs) {
  const std::string name = inputs.text_or("instrument", way.instrument);
  const Instrument* const found = water::instrument_named(name);
  if (!found || found->reads != way.reads) {
    return unknown("--instrument", fmt::format("`{}`", name), "an instrument that reads this",
                   names(way.reads), "Type one of these, or leave it out.");
  }
  Instrument mine = *found;
  mine.reading = inputs.value_or("reading-uncertainty", mine.reading);
  return mine;
}

Outcome reckon_salinity(const Inputs& inputs) {
  const auto found = way_of(inputs);
  if (const auto* refusal = std::get_if<Refusal>(&found)) return *refusal;
  const Way& way = *std::get<const Way*>(found);
  auto scale = water::GravityScale::celsius_25_25;
  if (way.reads == Reads::specific_gravity) {
    const std::string text = inputs.text_or("scale", "");
    const auto named = water::gravity_scale(text);
    if (!named) return untagged(text, inputs.has("scale"));
    scale = *named;
  }
  if (way.needs_temperature && !inputs.has("temperature-c")) {
    return missing("--temperature-c or --temperature-f", "temperature of the sample",
                   "Measure it in the sample itself, at the time of the reading.");
  }
  const auto instrument = instrument_of(way, inputs);
  if (const auto* refusal = std::get_if<Refusal>(&instrument)) return *refusal;
  const Instrument& mine = std::get<Instrument>(instrument);
  const auto answer =
      water::salinity_by(mine, inputs[way.option], {inputs.value_or("temperature-c", 20)}, scale);
  if (!answer) return refused(*answer.outside());

  const double sure = water::coverage_factor * answer->standard_uncertainty;
  const double grams = water::grams_per_practical_salinity;
  Reckoned reckoned{
      {{"practical_salinity", "practical salinity", answer->value, Unit::none, 3, sure},
       {"absolute_salinity_g_kg", "absolute salinity", answer->value * grams,
        Unit::grams_per_kilogram, 3, sure * grams}},
      way.formula,
      way.source,
      fmt::format("± is k = 2, about 95 %, for: {}", mine.words),
      answer.outside()};
  if (way.reads == Reads::specific_gravity) {
    reckoned.results.push_back({"scale", "scale", std::string(water::text(scale))});
  }
  if (way.reads == Reads::brine_scale) {
    reckoned.hints.emplace_back(
        "Read as if it were salinity, a brine scale is 3.6 % too high; this is corrected here.");
  }
  return reckoned;
}

}  // namespace

const Quantity salinity{
    "salinity", "Salinity from conductivity, specific gravity, refractive index or a brine scale",
    "tidewright reckon salinity --conductivity-ms-cm 53.07 --temperature-c 25", options,
    reckon_salinity};

}  // namespace tidewright::commands::reckon
