#include "core/water/hardness.hpp"

#include <fmt/format.h>

#include <array>

#include "core/water/cautions.hpp"
#include "core/water/membrane.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

constexpr std::array options{
    Option{"hardness", Unit::calcium_carbonate, "of the feed, as calcium carbonate", 0, 5000, true,
           by_kit},
    Option{"recovery", Unit::percent, "of the membrane: then also of its concentrate", 0, 95, false,
           by_two_flows},
    Option{"ph", Unit::none, "with the next three: then also whether it leaves scale", 4, 11, false,
           by_ph_meter},
    Option{"alkalinity", Unit::calcium_carbonate, "as calcium carbonate", 1, 5000, false, by_kit},
    Option{"feed", Unit::ppm, "TDS", 1, 10000, false, by_solids_meter},
    Option{"temperature", Unit::celsius, "where it would leave scale: of the pipe, or of the wash",
           0, 90, false, by_thermometer},
    Option{"calcium", Unit::calcium_carbonate, "calcium's part of the hardness; all if left out", 1,
           5000, false, by_kit}};

// The index's own error: core/water/hardness.hpp.
constexpr double index_uncertainty = 0.2;

const char* words(water::Hardness hardness) {
  if (hardness == water::Hardness::soft) return "soft";
  if (hardness == water::Hardness::moderately_hard) return "moderately hard";
  return hardness == water::Hardness::hard ? "hard" : "very hard";
}

const char* scale_words(double index) {
  if (index > index_uncertainty) return "it leaves scale";
  return index < -index_uncertainty ? "none: it takes lime and attacks metal" : "about in balance";
}

// Of one of the two waters: `key` and `label` stand before its results' own.
struct Named {
  std::string key;
  std::string label;
};

std::optional<Refusal> add_class(const Named& named, MilligramsPerLitre hardness,
                                 Reckoned& reckoned) {
  const auto grade = water::hardness_class(hardness);
  if (!grade) return refused(*grade.outside());
  const auto grains = water::grains_per_gallon(hardness);
  if (!grains) return refused(*grains.outside());
  reckoned.results.push_back({named.key + "hardness_mg_l", named.label + "hardness", hardness.value,
                              Unit::milligrams_per_litre, 1});
  reckoned.results.push_back(
      {named.key + "grains_per_gallon", named.label + "grains / US gal", *grains, Unit::none, 2});
  reckoned.results.push_back(
      {named.key + "hardness_class", named.label + "class", std::string(words(*grade))});
  return std::nullopt;
}

std::optional<Refusal> add_scale(const Named& named, const water::ScaleWater& water,
                                 Reckoned& reckoned) {
  const auto scale = water::langelier(water);
  if (!scale) return refused(*scale.outside());
  reckoned.results.push_back({named.key + "langelier_index", named.label + "Langelier index",
                              scale->index, Unit::none, 2});
  reckoned.results.push_back(
      {named.key + "scale", named.label + "scale", std::string(scale_words(scale->index))});
  return std::nullopt;
}

bool wants_scale(const Inputs& inputs) {
  return inputs.has("ph") || inputs.has("alkalinity-mg-l") || inputs.has("feed-ppm") ||
         inputs.has("temperature-c");
}

std::optional<Refusal> lacks_for_scale(const Inputs& inputs) {
  for (const char* option : {"ph", "alkalinity-mg-l", "feed-ppm", "temperature-c"}) {
    if (inputs.has(option)) continue;
    return missing(fmt::format("--{}", option), "all four that the index is reckoned from",
                   fmt::format("Type them, as here: {}", hardness.example));
  }
  return std::nullopt;
}

water::ScaleWater feed_of(const Inputs& inputs) {
  return {{inputs["temperature-c"]},
          {inputs["feed-ppm"]},
          {inputs.value_or("calcium-mg-l", inputs["hardness-mg-l"])},
          {inputs["alkalinity-mg-l"]},
          inputs["ph"]};
}

std::optional<Refusal> add_concentrate(const Inputs& inputs, Reckoned& reckoned) {
  // A membrane holds back nearly all that is hard.
  const auto factor = water::concentration_factor(inputs["recovery-percent"] / 100, 1);
  if (!factor) return refused(*factor.outside());
  const Named named{"concentrate_", "concentrate: "};
  if (auto refusal = add_class(named, {*factor * inputs["hardness-mg-l"]}, reckoned)) {
    return refusal;
  }
  if (wants_scale(inputs)) {
    const auto concentrate = water::concentrated(feed_of(inputs), *factor);
    if (!concentrate) return refused(*concentrate.outside());
    if (auto refusal = add_scale(named, *concentrate, reckoned)) return refusal;
    reckoned.hints.emplace_back(
        "The concentrate's pH was taken as the feed's + log10 of the factor: measured, it may be "
        "lower, and with it the index.");
  }
  warn_of("The concentrate", water::concentrate_cautions, reckoned);
  return std::nullopt;
}

Outcome reckon_hardness(const Inputs& inputs) {
  Reckoned reckoned{
      {},
      "classes at 60, 120 and 180 mg/L; index = pH - saturation pH, which is 9.3 + (log TDS - 1) / "
      "10 + 34.55 - 13.12 log(t + 273) - (log calcium - 0.4) - log alkalinity",
      "classes: US Geological Survey; grains: NIST Handbook 44; index: Langelier 1936, J. Am. "
      "Water Works Assoc. 28:1500",
      "the index is good to 0.2; it says whether there is scale, not how much"};
  if (auto refusal = add_class({}, {inputs["hardness-mg-l"]}, reckoned)) return *refusal;
  if (wants_scale(inputs)) {
    if (auto refusal = lacks_for_scale(inputs)) return *refusal;
    if (auto refusal = add_scale({}, feed_of(inputs), reckoned)) return *refusal;
  }
  reckoned.hints.emplace_back(
      "On test kits: 1 German degree is 17.85 mg/L, 1 French 10, 1 grain per US gallon 17.12, 1 "
      "mmol/L 100.");
  if (inputs.has("recovery-percent")) {
    if (auto refusal = add_concentrate(inputs, reckoned)) return *refusal;
  }
  return reckoned;
}

}  // namespace

const Quantity hardness{
    "hardness", "How hard the feed is and its concentrate, and whether they leave scale",
    "tidewright reckon hardness --hardness-mg-l 200 --recovery-percent 50 --ph 7.4 "
    "--alkalinity-mg-l 180 --feed-ppm 400 --temperature-c 12",
    options, reckon_hardness};

}  // namespace tidewright::commands::reckon
