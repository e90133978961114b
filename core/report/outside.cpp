#include "core/report/outside.hpp"

#include <fmt/format.h>

namespace tidewright::report {

std::string words(const water::Outside& outside) {
  const water::Range& range = outside.range;
  const std::string unit = range.unit.empty() ? "" : fmt::format(" {}", range.unit);
  return fmt::format("{} {:.7g}{} is outside {:.7g} to {:.7g}{}", range.name, outside.found, unit,
                     range.low, range.high, unit);
}

}  // namespace tidewright::report
