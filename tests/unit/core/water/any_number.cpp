// No NaN and no infinity comes out of core/water, whatever finite numbers go in; and what goes in
// as NaN is refused. Ten million calls; TIDEWRIGHT_SEED chooses the numbers.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <bit>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <random>
#include <string>

#include "tests/support/numbers.hpp"

namespace tidewright::water {
namespace {

using namespace support;

constexpr int calls = 10'000'000;

using Limits = std::numeric_limits<double>;
constexpr std::array edges{0.0,
                           -0.0,
                           1.0,
                           25.0,
                           Limits::denorm_min(),
                           Limits::min(),
                           -Limits::min(),
                           Limits::epsilon(),
                           Limits::max(),
                           Limits::lowest()};

unsigned seed() {
  const char* const given = std::getenv("TIDEWRIGHT_SEED");
  return given ? static_cast<unsigned>(std::stoul(given)) : std::random_device{}();
}

// Half of them numbers that a water room has, the rest any bits at all and the edges of `double`.
double any_finite(std::mt19937_64& chance) {
  const std::uint64_t bits = chance();
  if (bits % 2 == 0) return -10 + 80 * static_cast<double>(bits >> 11) * 0x1p-53;
  if (bits % 16 == 1) return edges[(bits >> 4) % edges.size()];
  const double number = std::bit_cast<double>(chance());
  return std::isfinite(number) ? number : 0;
}

void expect_finite(std::span<const NumberFunction> functions, std::mt19937_64& chance, int times) {
  Numbers in{};
  for (int i = 0; i < times; ++i) {
    for (double& one : in) one = any_finite(chance);
    const NumberFunction& function = functions[static_cast<std::size_t>(i) % functions.size()];
    ASSERT_TRUE(function.call(in).finite)
        << fmt::format("{} of {:.17g}, {:.17g}, {:.17g}, {:.17g}, {:.17g}, {:.17g} ...",
                       function.name, in[0], in[1], in[2], in[3], in[4], in[5]);
  }
}

TEST(AnyNumber, GoesInAndOnlyFiniteOnesComeOut) {
  const unsigned chosen = seed();
  fmt::print("TIDEWRIGHT_SEED={}\n", chosen);
  std::mt19937_64 chance(chosen);
  expect_finite(seawater_functions(), chance, calls);
}

TEST(AnyNumber, ButNaNIsRefused) {
  Numbers in{};
  in.fill(Limits::quiet_NaN());
  for (const NumberFunction& function : seawater_functions()) {
    EXPECT_FALSE(function.call(in).answered) << function.name;
  }
}

}  // namespace
}  // namespace tidewright::water
