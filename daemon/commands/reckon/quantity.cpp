#include "daemon/commands/reckon/quantity.hpp"

#include <fmt/format.h>
#include <sysexits.h>

namespace tidewright::commands::reckon {

std::string option_key(const Option& option) {
  return option_name(option.stem, option.unit).substr(2);
}

bool Inputs::has(std::string_view option) const {
  return numbers_.find(option) != numbers_.end() || texts_.find(option) != texts_.end();
}

double Inputs::operator[](std::string_view option) const {
  const auto at = numbers_.find(option);
  return at == numbers_.end() ? otherwise_.find(option)->second : at->second;
}

std::optional<double> Inputs::limit(std::string_view option) const {
  const auto at = limits_.find(option);
  return at == limits_.end() ? std::nullopt : std::optional(at->second);
}

double Inputs::value_or(std::string_view option, double otherwise) const {
  const auto at = numbers_.find(option);
  return at == numbers_.end() ? otherwise : at->second;
}

std::string Inputs::text_or(std::string_view option, std::string_view otherwise) const {
  const auto at = texts_.find(option);
  return at == texts_.end() ? std::string(otherwise) : at->second;
}

Refusal refused(const water::Outside& outside) {
  const water::Range& range = outside.range;
  const std::string unit = range.unit.empty() ? "" : fmt::format(" {}", range.unit);
  return {
      std::string(range.name),
      fmt::format("{:.6g}{}", outside.found, unit),
      "a value that the formula holds for",
      fmt::format("{:.6g} to {:.6g}{}", range.low, range.high, unit),
      "Check the numbers and their units: one of them cannot be right together with the others.",
      EX_DATAERR};
}

Refusal missing(std::string where, std::string expected, std::string remedy) {
  return {std::move(where), "nothing", std::move(expected), "", std::move(remedy), EX_USAGE};
}

Refusal unknown(std::string where, std::string found, std::string expected, std::string allowed,
                std::string remedy) {
  return {std::move(where),   std::move(found),  std::move(expected),
          std::move(allowed), std::move(remedy), EX_USAGE};
}

}  // namespace tidewright::commands::reckon
