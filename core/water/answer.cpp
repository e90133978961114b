#include "core/water/answer.hpp"

#include <fmt/format.h>

namespace tidewright::water {

std::string words(const Outside& outside) {
  const Range& range = outside.range;
  const std::string unit = range.unit.empty() ? "" : fmt::format(" {}", range.unit);
  return fmt::format("{} {:.6g}{} is outside {:.6g} to {:.6g}{}", range.name, outside.found, unit,
                     range.low, range.high, unit);
}

}  // namespace tidewright::water
