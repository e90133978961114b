#include "daemon/commands/reckon/compensation_law.hpp"

#include <fmt/format.h>

namespace tidewright::commands::reckon {

using Law = water::Compensation::Law;

std::optional<water::Compensation> law_named(std::string_view name, const Inputs& inputs) {
  if (name == "linear") {
    const double usual = water::Compensation{}.percent_per_celsius;
    return water::Compensation{Law::linear, inputs.value_or("percent-per-celsius", usual)};
  }
  if (name == "iso-7888") return water::iso_7888;
  if (name == "none") return water::Compensation{Law::none};
  return std::nullopt;
}

std::optional<Refusal> coefficient_without_linear(const water::Compensation& law,
                                                  const Inputs& inputs) {
  if (law.law == Law::linear || !inputs.has("percent-per-celsius")) return std::nullopt;
  return unknown("--percent-per-celsius", "a coefficient, and a law that has none",
                 "a coefficient of the linear law alone", "",
                 "Type --law linear with it, or leave the coefficient out.");
}

std::string words(const water::Compensation& law) {
  switch (law.law) {
    case Law::linear:
      return fmt::format("linear, {:.4g} % per °C", law.percent_per_celsius);
    case Law::iso_7888:
      return "ISO 7888";
    case Law::none:
      break;
  }
  return "none: the meter shows what it measured";
}

}  // namespace tidewright::commands::reckon
