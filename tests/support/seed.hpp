// The seeds of simulations. One that failed is lived through again by itself:
//   TIDEWRIGHT_SEED=17 ctest --preset dev -R QuietMonth
#pragma once

#include <cstdint>
#include <vector>

namespace tidewright::support {

// What TIDEWRIGHT_SEED says, else the usual ones. Throws std::runtime_error if it is no number.
std::vector<std::uint64_t> seeds(std::vector<std::uint64_t> usual);

// One line for the test's own output, before it begins.
void print_seed(std::uint64_t seed);

}  // namespace tidewright::support
