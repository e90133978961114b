#include "daemon/commands/reckon/salinity_way.hpp"

#include <fmt/format.h>

#include <array>

#include "daemon/commands/reckon/compensation_law.hpp"

namespace tidewright::commands::reckon {
namespace {

using water::Instrument;
using Reads = Instrument::Reads;

constexpr const char* practical_salinity_source =
    "Perkin & Lewis 1980, IEEE Journal of Oceanic Engineering OE-5:9-16; UNESCO Technical Papers "
    "in Marine Science 44";

constexpr std::array ways{
    Way{Reads::conductivity, "conductivity-ms-cm", "probe", true,
        "Practical Salinity Scale 1978: a polynomial in the root of C / 42.914 mS/cm",
        practical_salinity_source},
    Way{Reads::conductivity, compensated_conductivity, "probe", true,
        "raw conductivity = what is shown / the factor of the meter's law at the temperature; then "
        "the Practical Salinity Scale 1978",
        practical_salinity_source},
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
        "Deep-Sea Research 37(12):1909-1926"}};

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

Refusal lawless(const std::string& found, bool given) {
  return unknown("--law", given ? fmt::format("`{}`", found) : "no law",
                 "the law by which the meter turns conductivity into that at 25 °C",
                 "linear, iso-7888, none",
                 "It stands in the meter's manual or menu, as temperature coefficient or "
                 "compensation. No law is right for seawater: at 20 °C and a salinity of 35 the "
                 "linear one of 2 % is 0.13 too high, ISO 7888 0.30. Who knows it can undo it.");
}

// What the meter measured before it compensated.
std::optional<Refusal> undo(const Inputs& inputs, Measured& measured) {
  const std::string text = inputs.text_or("law", "");
  measured.undone = law_named(text, inputs);
  if (!measured.undone) return lawless(text, inputs.has("law"));
  if (auto refusal = coefficient_without_linear(*measured.undone, inputs)) return refusal;
  const auto factor = water::factor_to_25(*measured.undone, measured.temperature);
  if (!factor) return refused(*factor.outside());
  measured.reading /= *factor;
  return std::nullopt;
}

}  // namespace

std::variant<const Way*, Refusal> typed_way(const Inputs& inputs, const char* example) {
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
      "--conductivity-ms-cm, --conductivity-at-25-ms-cm, --specific-gravity, --refractive-index or "
      "--brine-scale-g-kg",
      "a reading", fmt::format("Type one of them, as here: {}", example));
}

std::variant<Measured, Refusal> measured(const Way& way, const Inputs& inputs) {
  if (way.needs_temperature && !inputs.has("temperature-c")) {
    return missing("--temperature-c or --temperature-f", "temperature of the sample",
                   "Measure it in the sample itself, at the time of the reading.");
  }
  Measured measured{inputs[way.option], {inputs.value_or("temperature-c", 20)}};
  if (way.reads == Reads::specific_gravity) {
    const std::string text = inputs.text_or("scale", "");
    const auto named = water::gravity_scale(text);
    if (!named) return untagged(text, inputs.has("scale"));
    measured.scale = *named;
  }
  if (way.compensated()) {
    if (const auto refusal = undo(inputs, measured)) return *refusal;
  } else if (inputs.has("law") || inputs.has("percent-per-celsius")) {
    return unknown(inputs.has("law") ? "--law" : "--percent-per-celsius",
                   "a law, and a reading that has none", "a law with --conductivity-at-25-ms-cm",
                   "",
                   "Type the conductivity as --conductivity-at-25-ms-cm if the meter compensates, "
                   "or leave the law out.");
  }
  return measured;
}

std::variant<Instrument, Refusal> typed_instrument(const Way& way, const Inputs& inputs) {
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

}  // namespace tidewright::commands::reckon
