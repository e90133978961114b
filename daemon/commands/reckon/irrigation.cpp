#include "core/water/irrigation.hpp"

#include <array>

#include "core/water/cautions.hpp"
#include "core/water/sodium_hazard.hpp"
#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/shared.hpp"

namespace tidewright::commands::reckon {
namespace {

using water::IrrigationItem;

constexpr std::array options{
    Option{"conductivity", Unit::millisiemens_per_cm,
           "of the water, at 25 °C; mS/cm is the same as dS/m", 0, 20, true, by_conductivity_meter},
    Option{"sodium", Unit::milliequivalents_per_litre,
           "with calcium and magnesium: then sodium, too", 0, 500, false, by_analysis},
    Option{"calcium", Unit::milliequivalents_per_litre, "calcium", 0.001, 500, false, by_analysis},
    Option{"magnesium", Unit::milliequivalents_per_litre, "magnesium", 0, 500, false, by_analysis},
    Option{"bicarbonate", Unit::milliequivalents_per_litre,
           "with carbonate: then the adjusted ratio, too", 0, 500, false, by_analysis},
    Option{"chloride", Unit::milliequivalents_per_litre, "chloride", 0, 500, false, by_analysis},
    Option{"soil", Unit::millisiemens_per_cm,
           "what the plant bears in the soil: then the share that must drain", 0.1, 40}};

std::string words(water::Restriction restriction) {
  switch (restriction) {
    case water::Restriction::none:
      return "none";
    case water::Restriction::slight_to_moderate:
      return "slight to moderate";
    case water::Restriction::severe:
      break;
  }
  return "severe";
}

std::optional<Refusal> add_grade(const std::string& key, const std::string& label,
                                 const water::Answer<water::Restriction>& grade,
                                 Reckoned& reckoned) {
  if (!grade) return refused(*grade.outside());
  reckoned.results.push_back({key, label, words(*grade)});
  return std::nullopt;
}

std::optional<Refusal> add_sodium(const Inputs& inputs, Reckoned& reckoned) {
  if (!inputs.has("calcium-meq-l") || !inputs.has("magnesium-meq-l")) {
    return missing("--calcium-meq-l and --magnesium-meq-l", "what stands against the sodium",
                   "mg/L of calcium / 20.04 and of magnesium / 12.15 are meq/L.");
  }
  const MillisiemensPerCm conductivity{inputs["conductivity-ms-cm"]};
  const water::IrrigationIons ions{{inputs["sodium-meq-l"]},
                                   {inputs["calcium-meq-l"]},
                                   {inputs["magnesium-meq-l"]},
                                   {inputs.value_or("bicarbonate-meq-l", 0)}};
  const auto ratio = water::sodium_adsorption_ratio(ions);
  if (!ratio) return refused(*ratio.outside());
  reckoned.results.push_back(
      {"sodium_adsorption_ratio", "sodium adsorption ratio", *ratio, Unit::none, 3});
  auto refusal = add_grade("sodium_restriction", "restriction by sodium",
                           water::restriction(IrrigationItem::sodium_surface, *ratio), reckoned);
  if (!refusal) {
    refusal = add_grade("infiltration_restriction", "restriction by infiltration",
                        water::infiltration_restriction(*ratio, conductivity), reckoned);
  }
  if (refusal || !inputs.has("bicarbonate-meq-l")) return refusal;
  const auto adjusted = water::adjusted_sodium_adsorption_ratio(ions, conductivity);
  if (!adjusted) return refused(*adjusted.outside());
  reckoned.results.push_back(
      {"adjusted_sodium_adsorption_ratio", "adjusted ratio", *adjusted, Unit::none, 3});
  const auto residual = water::residual_sodium_carbonate(ions);
  if (!residual) return refused(*residual.outside());
  reckoned.results.push_back({"residual_sodium_carbonate_meq_l", "residual sodium carbonate",
                              residual->value, Unit::milliequivalents_per_litre, 3});
  if (!reckoned.remark) reckoned.remark = adjusted.outside();
  return std::nullopt;
}

Outcome reckon_irrigation(const Inputs& inputs) {
  const MillisiemensPerCm conductivity{inputs["conductivity-ms-cm"]};
  Reckoned reckoned{{},
                    "the guideline's limits; sodium adsorption ratio = Na / sqrt((Ca + Mg) / 2); "
                    "share to drain = EC / (5 EC of the soil - EC)",
                    "FAO Irrigation and Drainage Paper 29 rev. 1, Ayers & Westcot 1985",
                    "guidelines for farms, not laws; pots without drainage bear less"};
  auto refusal =
      add_grade("salinity_restriction", "restriction by salt",
                water::restriction(IrrigationItem::conductivity, conductivity.value), reckoned);
  if (!refusal && inputs.has("sodium-meq-l")) refusal = add_sodium(inputs, reckoned);
  if (!refusal && inputs.has("chloride-meq-l")) {
    refusal = add_grade(
        "chloride_restriction", "restriction by chloride",
        water::restriction(IrrigationItem::chloride_surface, inputs["chloride-meq-l"]), reckoned);
  }
  if (!refusal && inputs.has("soil-ms-cm")) {
    const auto share = water::leaching_requirement(conductivity, {inputs["soil-ms-cm"]});
    if (!share) return refused(*share.outside());
    reckoned.results.push_back(
        {"leaching_percent", "must drain off below", 100 * *share, Unit::percent, 1});
  }
  if (refusal) return *refusal;
  warn_of("The concentrate", water::concentrate_cautions, reckoned);
  return reckoned;
}

}  // namespace

const Quantity irrigation{"irrigation", "Whether the concentrate can be given to plants",
                          "tidewright reckon irrigation --conductivity-ms-cm 1.15 --sodium-meq-l "
                          "7.73 --calcium-meq-l 2.32 --magnesium-meq-l 1.44",
                          options, reckon_irrigation};

}  // namespace tidewright::commands::reckon
