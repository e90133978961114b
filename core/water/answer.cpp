#include "core/water/answer.hpp"

#include <fmt/format.h>

namespace tidewright::water {

std::string words(const Outside& outside) {
  const Range& range = outside.range;
  const std::string unit = range.unit.empty() ? "" : fmt::format(" {}", range.unit);
  return fmt::format("{} {:.7g}{} is outside {:.7g} to {:.7g}{}", range.name, outside.found, unit,
                     range.low, range.high, unit);
}

}  // namespace tidewright::water
