// No NaN and no infinity comes out of core/water, whatever finite numbers go in; and what goes in
// as NaN is refused. Ten million calls of seawater's functions, of the purifier's and of the
// mixture's; TIDEWRIGHT_SEED chooses the numbers, TIDEWRIGHT_CALLS how many calls of each.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <bit>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include "tests/support/numbers.hpp"

namespace tidewright::water {
namespace {

using namespace support;

constexpr int usual_calls = 1'000'000;

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

int calls() {
  const char* const given = std::getenv("TIDEWRIGHT_CALLS");
  return given ? std::stoi(given) : usual_calls;
}

// A number that a water room has; one in eight is like a relative density or a refractive index.
double ordinary(std::uint64_t bits) {
  const double share = static_cast<double>(bits >> 11) * 0x1p-53;
  return (bits >> 1) % 8 == 0 ? 0.95 + 0.45 * share : -10 + 80 * share;
}

// Half of them ordinary, the rest any bits at all and the edges of `double`.
double any_finite(std::mt19937_64& chance) {
  const std::uint64_t bits = chance();
  if (bits % 2 == 0) return ordinary(bits);
  if (bits % 16 == 1) return edges[(bits >> 4) % edges.size()];
  const double number = std::bit_cast<double>(chance());
  return std::isfinite(number) ? number : 0;
}

void expect_finite(std::span<const NumberFunction> functions, std::mt19937_64& chance, int times) {
  Numbers in{};
  std::vector<int> answered(functions.size());
  for (int i = 0; i < times; ++i) {
    // A formula of many numbers seldom gets to its end if each of them may be anything.
    const bool all_ordinary = chance() % 2 == 0;
    for (double& one : in) one = all_ordinary ? ordinary(chance()) : any_finite(chance);
    const std::size_t chosen = static_cast<std::size_t>(i) % functions.size();
    const NumberFunction& function = functions[chosen];
    const Outcome outcome = function.call(in);
    answered[chosen] += outcome.answered;
    ASSERT_TRUE(outcome.finite) << fmt::format(
        "{} of {:.17g}, {:.17g}, {:.17g}, {:.17g}, {:.17g}, {:.17g} ...", function.name, in[0],
        in[1], in[2], in[3], in[4], in[5]);
  }
  // Who only refuses has not been tried.
  for (std::size_t i = 0; i < functions.size(); ++i) {
    EXPECT_GT(answered[i], times / 1'000'000) << functions[i].name;
  }
}

TEST(AnyNumber, GoesInAndOnlyFiniteOnesComeOut) {
  const unsigned chosen = seed();
  fmt::print("TIDEWRIGHT_SEED={}\n", chosen);
  std::mt19937_64 chance(chosen);
  const int times = calls();
  for (const auto functions : all_functions()) {
    expect_finite(functions, chance, times);
    if (HasFailure()) return;
    fmt::print("{} calls of {} functions from {} on: finite in, finite out\n", times,
               functions.size(), functions.front().name);
  }
}

TEST(AnyNumber, ButNaNIsRefused) {
  Numbers in{};
  in.fill(Limits::quiet_NaN());
  for (const auto functions : all_functions()) {
    for (const NumberFunction& function : functions) {
      EXPECT_FALSE(function.call(in).answered) << function.name;
    }
  }
}

}  // namespace
}  // namespace tidewright::water
