#include <fmt/format.h>

#include <array>
#include <cmath>

#include "core/water/practical_salinity.hpp"
#include "core/water/reference_salt.hpp"
#include "daemon/commands/reckon/compensation_law.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/salinity_way.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

using Reads = water::Instrument::Reads;

constexpr std::array options{
    Option{"conductivity", Unit::millisiemens_per_cm,
           "raw conductivity, not one turned into that at 25 °C", 0, 150},
    Option{"conductivity-at-25", Unit::millisiemens_per_cm,
           "compensated: what a meter shows for 25 °C; needs --law", 0, 200},
    Option{"law", Unit::text, "how that meter does it: linear, iso-7888, none"},
    percent_per_celsius,
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

// What the meter's law was, what was measured before it, and what it would have come to unnoticed.
void tell_undone(const Measured& sample, const water::Instrument& mine, double shown,
                 double salinity, Reckoned& reckoned) {
  const double sure = water::coverage_factor * mine.reading * sample.reading;
  reckoned.results.push_back({"conductivity_ms_cm", "raw conductivity", sample.reading,
                              Unit::millisiemens_per_cm, 3, sure});
  reckoned.results.push_back({"law", "the meter's law", words(*sample.undone)});
  reckoned.source += "; the laws: ISO 7888:1985, Standard Methods 2510 B";
  reckoned.hints.emplace_back(
      "The temperature must be the one that the meter itself shows: with that it compensated.");
  const auto unnoticed = water::practical_salinity(MillisiemensPerCm{shown}, {25});
  const double error = unnoticed ? unnoticed->value - salinity : 0;
  if (std::abs(error) < 0.005) return;
  reckoned.hints.push_back(fmt::format(
      "Taken for the conductivity that the water has at 25 °C, what the meter shows would make a "
      "salinity of {:.2f}: {:.2f} too {}.",
      unnoticed->value, std::abs(error), error < 0 ? "low" : "high"));
}

Outcome reckon_salinity(const Inputs& inputs) {
  const auto found = typed_way(inputs, salinity.example);
  if (const auto* refusal = std::get_if<Refusal>(&found)) return *refusal;
  const Way& way = *std::get<const Way*>(found);
  const auto taken = measured(way, inputs);
  if (const auto* refusal = std::get_if<Refusal>(&taken)) return *refusal;
  const Measured& sample = std::get<Measured>(taken);
  const auto instrument = typed_instrument(way, inputs);
  if (const auto* refusal = std::get_if<Refusal>(&instrument)) return *refusal;
  const auto& mine = std::get<water::Instrument>(instrument);
  const auto answer = water::salinity_by(mine, sample.reading, sample.temperature, sample.scale);
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
  if (sample.undone) {
    tell_undone(sample, mine, inputs[way.option], answer->value, reckoned);
  }
  if (way.reads == Reads::specific_gravity) {
    reckoned.results.push_back({"scale", "scale", std::string(water::text(sample.scale))});
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
