// 2,000 random states against an independent library: the TEOS-10 toolbox in Debian's python3-gsw.
// TIDEWRIGHT_SEED chooses the states; without it each run has others.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <memory>
#include <random>
#include <string>
#include <vector>

#include "core/water/practical_salinity.hpp"
#include "core/water/reference_salt.hpp"
#include "core/water/seawater.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

constexpr int count = 2000;

// One line of gsw_states.py.
struct State {
  PracticalSalinity salinity;
  Celsius temperature;
  MillisiemensPerCm conductivity;
  PracticalSalinity salinity_again;
  GramsPerKilogram grams;
  KilogramsPerCubicMetre density;
  JoulesPerKilogramKelvin heat_capacity;
  JoulesPerKilogram enthalpy;
};

unsigned seed() {
  const char* const given = std::getenv("TIDEWRIGHT_SEED");
  return given ? static_cast<unsigned>(std::stoul(given)) : std::random_device{}();
}

std::vector<State> states(unsigned seed) {
  const std::string command = fmt::format(
      "/usr/bin/python3 " TIDEWRIGHT_SOURCE_DIR "/tests/handbook/gsw_states.py {} {}", seed, count);
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
  std::vector<State> all;
  State s;
  while (pipe && std::fscanf(pipe.get(), "%lf,%lf,%lf,%lf,%lf,%lf,%lf,%lf", &s.salinity.value,
                             &s.temperature.value, &s.conductivity.value, &s.salinity_again.value,
                             &s.grams.value, &s.density.value, &s.heat_capacity.value,
                             &s.enthalpy.value) == 8) {
    all.push_back(s);
  }
  return all;
}

void expect_agreement(const State& s) {
  const Celsius t = s.temperature;
  EXPECT_NEAR(or_nan(water::practical_salinity(s.conductivity, t)), s.salinity_again.value, 1e-4);
  EXPECT_NEAR(or_nan(water::conductivity(s.salinity, t)), s.conductivity.value, 1e-4);
  EXPECT_NEAR(water::absolute_salinity(s.salinity).value, s.grams.value, 1e-9);
  EXPECT_NEAR(or_nan(water::density_teos10(s.grams, t)), s.density.value, 1e-3);
  EXPECT_NEAR(or_nan(water::salinity_of_density(s.density, t)), s.grams.value, 1e-4);
  EXPECT_NEAR(or_nan(water::heat_capacity(s.grams, t)), s.heat_capacity.value, 1e-3);
  EXPECT_NEAR(or_nan(water::enthalpy(s.grams, t)), s.enthalpy.value, 1e-2);
  EXPECT_NEAR(or_nan(water::temperature_of_enthalpy(s.grams, s.enthalpy)), t.value, 1e-5);
}

TEST(ReferenceLibrary, AgreesInRandomStates) {
  const unsigned chosen = seed();
  fmt::print("TIDEWRIGHT_SEED={}\n", chosen);
  const std::vector<State> all = states(chosen);
  ASSERT_EQ(all.size(), count) << "gsw_states.py failed: is the package python3-gsw installed?";
  for (const State& s : all) {
    SCOPED_TRACE(fmt::format("salinity {} at {} degrees, seed {}", s.salinity.value,
                             s.temperature.value, chosen));
    expect_agreement(s);
    if (testing::Test::HasFailure()) return;
  }
  fmt::print(
      "{} random states agree with python3-gsw. The same again: TIDEWRIGHT_SEED={} "
      "build/release/tests/handbook_tests --gtest_filter='ReferenceLibrary*'\n",
      all.size(), chosen);
}

}  // namespace
}  // namespace tidewright::handbook
