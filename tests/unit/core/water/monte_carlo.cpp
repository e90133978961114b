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

// One that reads `salinity` of seawater at `room`.
double reading_of(const Instrument& instrument, PracticalSalinity salinity) {
  switch (instrument.reads) {
    case Instrument::Reads::conductivity:
      return conductivity(salinity, room)->value;
    case Instrument::Reads::specific_gravity:
      return *hydrometer_reading(salinity, room, GravityScale::fahrenheit_60_60);
    case Instrument::Reads::refractive_index:
      return *refractive_index(salinity, room);
    case Instrument::Reads::brine_scale:
      return brine_scale_reading(salinity)->value;
    case Instrument::Reads::practical_salinity:
      break;
  }
  return salinity.value;
}

double salinity_of(Instrument::Reads reads, double reading, Celsius temperature) {
  switch (reads) {
    case Instrument::Reads::conductivity:
      return practical_salinity(MillisiemensPerCm{reading}, temperature)->value;
    case Instrument::Reads::specific_gravity:
      return salinity_of_hydrometer(reading, temperature, GravityScale::fahrenheit_60_60)->value;
    case Instrument::Reads::refractive_index:
      return salinity_of_refraction(reading, temperature)->value;
    case Instrument::Reads::brine_scale:
      return salinity_of_brine_scale({reading})->value;
    case Instrument::Reads::practical_salinity:
      break;
  }
  return reading;
}

class MonteCarloOf : public MonteCarlo, public testing::WithParamInterface<Instrument> {
 protected:
  void expect_spread_of(const Instrument& one) {
    const double reading = reading_of(one, {33});
    const bool relative = one.reads == Instrument::Reads::conductivity;
    const auto sure = salinity_by(one, reading, room, GravityScale::fahrenheit_60_60);
    EXPECT_NEAR(sure->value, 33, 1e-3);
    expect_spread(sure->standard_uncertainty, [&] {
      return salinity_of(one.reads, drawn(reading, one.reading * (relative ? reading : 1)),
                         {drawn(room.value, one.temperature.value)}) +
             drawn(0, one.salinity.value);
    });
  }
};

TEST_P(MonteCarloOf, Instrument) { expect_spread_of(GetParam()); }

// What a household knows better is carried through as well: each part by itself made three quarters
// of what it was.
TEST_P(MonteCarloOf, InstrumentOverridden) {
  struct Instrument mine = GetParam();
  const double usual = salinity_by(mine, reading_of(mine, {33}), room)->standard_uncertainty;
  mine.reading *= 0.75;
  mine.temperature = mine.temperature * 0.75;
  mine.salinity = mine.salinity * 0.75;
  const double better = salinity_by(mine, reading_of(mine, {33}), room)->standard_uncertainty;
  EXPECT_NEAR(better / usual, 0.75, 1e-3);
  expect_spread_of(mine);
}

INSTANTIATE_TEST_SUITE_P(All, MonteCarloOf, testing::ValuesIn(instruments()),
                         [](const auto& one) { return std::string(one.param.name); });

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
