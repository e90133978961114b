#include "tests/support/seed.hpp"

#include <fmt/core.h>

#include <charconv>
#include <cstdlib>
#include <stdexcept>
#include <string_view>

namespace tidewright::support {

std::vector<std::uint64_t> seeds(std::vector<std::uint64_t> usual) {
  const char* const wanted = std::getenv("TIDEWRIGHT_SEED");
  if (wanted == nullptr) return usual;
  const std::string_view text = wanted;
  std::uint64_t seed = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), seed);
  if (error != std::errc{} || end != text.data() + text.size()) {
    throw std::runtime_error("TIDEWRIGHT_SEED is no whole number: " + std::string(text));
  }
  return {seed};
}

void print_seed(std::uint64_t seed) {
  fmt::print("seed {0}: again by TIDEWRIGHT_SEED={0}\n", seed);
}

}  // namespace tidewright::support
