#include "daemon/commands/reckon/fresh_water.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/water/water_grade.hpp"

namespace tidewright::commands::reckon {
namespace {

using water::ReagentWater;
using water::SolidsScale;

std::string_view name(SolidsScale scale) {
  switch (scale) {
    case SolidsScale::sodium_chloride:
      return "sodium-chloride";
    case SolidsScale::irrigation:
      return "irrigation";
    case SolidsScale::natural_water:
      break;
  }
  return "natural-water";
}

// As people write a factor: "0.5", "0.50".
bool is_factor(const std::string& text, SolidsScale scale) {
  const double factor = water::solids_factor(scale);
  return text == fmt::format("{}", factor) || text == fmt::format("{:.2f}", factor);
}

struct Grade {
  ReagentWater type;
  const char* numeral;
};

constexpr std::array grades{Grade{ReagentWater::type_1, "I"}, Grade{ReagentWater::type_2, "II"},
                            Grade{ReagentWater::type_3, "III"}, Grade{ReagentWater::type_4, "IV"}};

}  // namespace

std::string key(SolidsScale scale) {
  std::string text(name(scale));
  std::replace(text.begin(), text.end(), '-', '_');
  return text;
}

std::string words(SolidsScale scale) {
  return fmt::format("{} ({})", water::solids_factor(scale), name(scale));
}

std::variant<SolidsScale, Refusal> typed_factor(const Inputs& inputs) {
  const std::string text = inputs.text_or("factor", "");
  std::string allowed;
  for (const SolidsScale scale : solids_scales) {
    if (text == name(scale) || is_factor(text, scale)) return scale;
    allowed += (allowed.empty() ? "" : ", ") + words(scale);
  }
  return unknown("--factor", inputs.has("factor") ? fmt::format("`{}`", text) : "no factor",
                 "the factor by which the meter makes ppm of µS/cm", allowed,
                 "It stands in the meter's manual or on its back; most hand meters have 0.5. "
                 "Without it the number means nothing: water of 600 µS/cm is 300, 384 or 420 ppm.");
}

std::string reagent_water(MicrosiemensPerCm at_25) {
  std::string types;
  for (const Grade& grade : grades) {
    if (at_25 > water::conductivity_limit(grade.type)) continue;
    types += fmt::format("{}{}", types.empty() ? "type " : ", ", grade.numeral);
  }
  return types.empty() ? no_reagent_water : types;
}

}  // namespace tidewright::commands::reckon
