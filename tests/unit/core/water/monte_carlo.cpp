// First-order uncertainties against many draws of the readings, each pushed through the same
// formula: JCGM 101:2008. The seed is printed; TIDEWRIGHT_SEED chooses it.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <functional>
#include <random>
#include <string>

#include "core/water/body.hpp"
#include "core/water/brine_scale.hpp"
#include "core/water/dosing.hpp"
#include "core/water/dosing_uncertainty.hpp"
#include "core/water/instrument.hpp"
#include "core/water/practical_salinity.hpp"
#include "core/water/reference_salt.hpp"
#include "core/water/refraction.hpp"
#include "core/water/specific_gravity.hpp"

namespace tidewright::water {
namespace {

constexpr int draws = 100'000;
// A standard deviation of 100,000 draws is itself known to 0.22 %; the rest is for second order.
constexpr double allowed = 0.015;
constexpr Celsius room{25};

class MonteCarlo : public testing::Test {
 protected:
  // Normal, but for the mean the value itself.
  double drawn(double value, double standard_uncertainty) {
    return value + standard_uncertainty * normal_(chance_);
  }

  double spread_of(const std::function<double()>& one) {
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < draws; ++i) {
      const double value = one();
      sum += value;
      squares += value * value;
    }
    return std::sqrt((squares - sum * sum / draws) / (draws - 1));
  }

  void expect_spread(double first_order, const std::function<double()>& one) {
    EXPECT_NEAR(spread_of(one) / first_order, 1, allowed) << "TIDEWRIGHT_SEED=" << seed_;
  }

  static unsigned seed() {
    const char* const given = std::getenv("TIDEWRIGHT_SEED");
    return given ? static_cast<unsigned>(std::stoul(given)) : std::random_device{}();
  }

  void SetUp() override { fmt::print("TIDEWRIGHT_SEED={}\n", seed_); }

 private:
  const unsigned seed_ = seed();
  std::mt19937_64 chance_{seed_};
  std::normal_distribution<double> normal_;
};

TEST_F(MonteCarlo, SalinityByConductivity) {
  const Instrument& probe = *instrument_named("probe");
  const double reading = conductivity({35}, room)->value;
  expect_spread(salinity_by(probe, reading, room)->standard_uncertainty, [&] {
    return practical_salinity(MillisiemensPerCm{drawn(reading, probe.reading * reading)},
                              {drawn(room.value, probe.temperature.value)})
        ->value;
  });
}

TEST_F(MonteCarlo, SalinityByHydrometer) {
  const Instrument& glass = *instrument_named("hydrometer");
  const auto scale = GravityScale::fahrenheit_60_60;
  const double reading = *hydrometer_reading({33}, room, scale);
  expect_spread(salinity_by(glass, reading, room, scale)->standard_uncertainty, [&] {
    return salinity_of_hydrometer(drawn(reading, glass.reading),
                                  {drawn(room.value, glass.temperature.value)}, scale)
        ->value;
  });
}

TEST_F(MonteCarlo, SalinityByRefractometers) {
  const Instrument& digital = *instrument_named("index_refractometer");
  const double index = *refractive_index({35}, room);
  expect_spread(salinity_by(digital, index, room)->standard_uncertainty, [&] {
    return salinity_of_refraction(drawn(index, digital.reading),
                                  {drawn(room.value, digital.temperature.value)})
               ->value +
           drawn(0, digital.salinity.value);
  });
  const Instrument& brine = *instrument_named("brine_refractometer");
  expect_spread(salinity_by(brine, 36.4, room)->standard_uncertainty, [&] {
    return salinity_of_brine_scale({drawn(36.4, brine.reading)})->value +
           drawn(0, brine.salinity.value);
  });
}

TEST_F(MonteCarlo, SalinityByWeight) {
  const DosingUncertainty by;
  const double salt = batch_of_finished({100}, room, {35}, 0.1)->salt.value;
  const double kilograms = mass({{100}, {35}, room})->value;
  expect_spread(salinity_estimate({100}, room, {35}, 0.1)->standard_uncertainty, [&] {
    const double dry = salt * drawn(1, by.salt_fraction) * (1 - drawn(0.1, by.water_fraction));
    return 1000 * dry / (kilograms * drawn(1, by.volume_fraction)) / grams_per_practical_salinity;
  });
}

TEST(Instrument, CanBeOverridden) {
  Instrument mine = *instrument_named("probe");
  mine.reading = 0;
  mine.temperature = {0};
  const double reading = conductivity({35}, room)->value;
  EXPECT_EQ(salinity_by(mine, reading, room)->standard_uncertainty, 0);
  mine.salinity = {0.1};
  EXPECT_NEAR(salinity_by(mine, reading, room)->standard_uncertainty, 0.1, 1e-12);
  mine.reading = -1;
  EXPECT_FALSE(salinity_by(mine, reading, room));
  EXPECT_EQ(instrument_named("toothpick"), nullptr);
}

}  // namespace
}  // namespace tidewright::water
