// Numbers for property tests. A property that fails is tried again with smaller numbers: with ones
// nearer to the low end.
#pragma once

#include <gtest/gtest.h>
// After gtest.
#include <rapidcheck/gtest.h>

#include <cstdint>

namespace tidewright::support {

// Evenly spread over low to high, both included, in 2^40 steps.
inline rc::Gen<double> between(double low, double high) {
  constexpr std::int64_t steps = std::int64_t{1} << 40;
  return rc::gen::map(rc::gen::inRange<std::int64_t>(0, steps + 1), [low, high](std::int64_t step) {
    return low + (high - low) * (static_cast<double>(step) / static_cast<double>(steps));
  });
}

}  // namespace tidewright::support
