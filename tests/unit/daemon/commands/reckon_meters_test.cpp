// What meters show, and what their numbers stand for: `salinity` of a compensated conductivity,
// `readings`, `solids` and `zero`.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
#include <sstream>

#include "daemon/commands/reckon/fresh_water.hpp"
#include "daemon/commands/reckon/quantities.hpp"
#include "daemon/commands/reckon/typed_numbers.hpp"

namespace tidewright::commands::reckon {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;

Reckoned reckoned(const Quantity& quantity, const std::string& line) {
  TypedOptions options;
  std::istringstream in(line);
  for (std::string word, value; in >> word >> value;) options[word] = value;
  const Outcome outcome = quantity.reckon(std::get<Inputs>(read_inputs(quantity, options)));
  return std::get<Reckoned>(outcome);
}

const Result* result(const Reckoned& reckoned, const std::string& key) {
  for (const Result& one : reckoned.results) {
    if (one.key == key) return &one;
  }
  return nullptr;
}

double number(const Reckoned& reckoned, const std::string& key) {
  const Result* const found = result(reckoned, key);
  return found ? std::get<double>(found->value) : std::numeric_limits<double>::quiet_NaN();
}

std::string text(const Reckoned& reckoned, const std::string& key) {
  const Result* const found = result(reckoned, key);
  return found ? std::get<std::string>(found->value) : "";
}

// Conductivities by the TEOS-10 toolbox (python3-gsw 3.6.16, C_from_SP): 24.104778 mS/cm at 20 and
// 12 degrees, 59.832111 at 36 and 30; divided by 1 + a (t - 25).
TEST(CompensatedMeter, IsUndone) {
  const Reckoned cold =
      reckoned(salinity, "--conductivity-at-25-ms-cm 32.574024 --temperature-c 12 --law linear");
  EXPECT_NEAR(number(cold, "practical_salinity"), 20, 1e-4);
  EXPECT_NEAR(number(cold, "conductivity_ms_cm"), 24.104778, 1e-5);
  const Reckoned warm = reckoned(salinity,
                                 "--conductivity-at-25-ms-cm 54.516730 --temperature-c 30 --law "
                                 "linear --percent-per-celsius 1.95");
  EXPECT_NEAR(number(warm, "practical_salinity"), 36, 1e-4);
  EXPECT_EQ(text(warm, "law"), "linear, 1.95 % per °C");
  const Reckoned raw =
      reckoned(salinity, "--conductivity-at-25-ms-cm 24.104778 --temperature-c 12 --law none");
  EXPECT_NEAR(number(raw, "practical_salinity"), 20, 1e-4);
}

// 12b_seawater_wrong_compensation: at 20 degrees 35.127 by 2 %, 35.301 by ISO 7888.
TEST(CompensatedMeter, IsToldWhatItWouldHaveComeTo) {
  const Reckoned linear =
      reckoned(salinity, "--conductivity-at-25-ms-cm 53.2423 --temperature-c 20 --law linear");
  EXPECT_THAT(linear.hints, Contains(HasSubstr("salinity of 35.13: 0.13 too high")));
  const Reckoned iso =
      reckoned(salinity, "--conductivity-at-25-ms-cm 53.4765 --temperature-c 20 --law iso-7888");
  EXPECT_THAT(iso.hints, Contains(HasSubstr("salinity of 35.30: 0.30 too high")));
  const Reckoned same =
      reckoned(salinity, "--conductivity-at-25-ms-cm 53.0710 --temperature-c 25 --law linear");
  EXPECT_THAT(same.hints, Not(Contains(HasSubstr("too "))));
}

// TEOS-10 toolbox (python3-gsw 3.6.16: C_from_SP, rho_t_exact), glass by ISO 1768:1975; the fluid
// in a kilogram of water by arithmetic: c / (1 - c / 1000).
TEST(Readings, AreThoseOfTheToolbox) {
  const Reckoned all = reckoned(
      readings,
      "--practical-salinity 33.3 --temperature-c 23 --scale 60F/60F --percent-per-celsius 1.91");
  EXPECT_NEAR(number(all, "conductivity_ms_cm"), 48.780693, 1e-4);
  EXPECT_NEAR(number(all, "linear_meter_ms_cm"), 50.718125, 1e-4);
  EXPECT_NEAR(number(all, "iso_7888_meter_ms_cm"), 50.927043, 1e-4);
  EXPECT_NEAR(number(all, "conductivity_at_25c_ms_cm"), 50.770969, 1e-4);
  EXPECT_NEAR(number(all, "specific_gravity_60f_60f"), 1.0255526, 2e-6);
  EXPECT_NEAR(number(all, "specific_gravity_25_4"), 1.0220856, 2e-6);
  EXPECT_NEAR(number(all, "hydrometer_reading"), 1.0238454, 2e-6);
  EXPECT_NEAR(number(all, "density_kg_m3"), 1022.6487, 1e-3);
  const double fluid = number(all, "calibration_fluid_g_kg");
  EXPECT_EQ(fluid, number(all, "brine_scale_g_kg"));
  EXPECT_NEAR(number(all, "calibration_fluid_per_kg_water_g"), fluid / (1 - fluid / 1000), 1e-9);
}

TEST(Readings, LeaveOutALawThatHasNoFactor) {
  const Reckoned warm = reckoned(readings, "--practical-salinity 35 --temperature-c 38");
  EXPECT_EQ(result(warm, "iso_7888_meter_ms_cm"), nullptr);
  EXPECT_THAT(warm.hints, Contains(HasSubstr("temperature 38 °C is outside 0 to 35 °C")));
  EXPECT_EQ(result(warm, "hydrometer_reading"), nullptr);
  EXPECT_TRUE(warm.remark);
}

// At every corner of what may be typed there is an answer.
TEST(Readings, AreAllThereToTheEnds) {
  for (const char* salinity : {"0", "55"}) {
    for (const char* temperature : {"0", "40"}) {
      const Reckoned all =
          reckoned(readings, std::string("--practical-salinity ") + salinity + " --temperature-c " +
                                 temperature + " --scale 25/25");
      EXPECT_GE(all.results.size(), 18U) << salinity << " " << temperature;
    }
  }
}

// A potassium chloride standard of 1413 uS/cm at 25 degrees has 1278 at 20, as a laboratory meter's
// manual prints it; Standard Methods 2510 B: 1.91 %. ISO 7888's factor at 20 degrees is 1.116.
TEST(Solids, AreCarriedTo25) {
  const Reckoned standard = reckoned(
      solids,
      "--conductivity-us-cm 1278 --temperature-c 20 --percent-per-celsius 1.91 --factor 0.5");
  EXPECT_NEAR(number(standard, "conductivity_at_25c_us_cm"), 1413, 1);
  const Reckoned natural =
      reckoned(solids, "--conductivity-us-cm 500 --temperature-c 20 --law iso-7888 --factor 0.7");
  EXPECT_NEAR(number(natural, "conductivity_at_25c_us_cm"), 558, 0.3);
  EXPECT_NEAR(number(natural, "solids_ppm"), 558 * 0.7, 0.3);
}

// Morash et al. 1994: 18.18 megohm cm at 25 degrees, whatever the temperature it was measured at.
// The raw reading of 5 degrees: 0.0166 uS/cm by Marshall & Franck 1981.
TEST(Solids, OfPureWaterFollowItsOwnLaw) {
  const std::string line = "--conductivity-us-cm 0.016632 --temperature-c 5 --factor 0.5";
  const Reckoned own = reckoned(solids, line);
  EXPECT_NEAR(number(own, "conductivity_at_25c_us_cm"), 1 / 18.18, 0.002);
  EXPECT_EQ(text(own, "law"), "pure water's own");
  EXPECT_EQ(result(own, "equivalents_meq_l"), nullptr);
  EXPECT_THAT(own.sureness, HasSubstr("0.003 µS/cm"));
  // 03_compensation: half of it, by the linear law.
  const Reckoned linear = reckoned(solids, line + " --law linear");
  EXPECT_NEAR(number(linear, "conductivity_at_25c_us_cm"), 0.02772, 1e-5);
  EXPECT_THAT(linear.hints, Contains(HasSubstr("half of what it has")));
}

// Above 2000 uS/cm the rules for equivalents do not hold.
TEST(Solids, HaveNoEquivalentsWhereIonsSlowEachOther) {
  const Reckoned strong = reckoned(solids, "--conductivity-at-25-us-cm 5000 --factor 0.5");
  EXPECT_EQ(result(strong, "equivalents_meq_l"), nullptr);
  EXPECT_EQ(number(strong, "solids_ppm"), 2500);
}

TEST(Solids, TakeAFactorByNumberOrName) {
  for (const char* factor : {"0.64", "irrigation"}) {
    const Reckoned one =
        reckoned(solids, std::string("--conductivity-at-25-us-cm 1000 --factor ") + factor);
    EXPECT_EQ(number(one, "solids_ppm"), 640) << factor;  // FAO 29: 640 mg/L for 1 dS/m
  }
  EXPECT_EQ(number(reckoned(solids, "--shown-ppm 50 --factor 0.50"), "conductivity_at_25c_us_cm"),
            100);
}

// A meter's 0 is no type I; and nothing conducts less than pure water, 0.055 uS/cm (Morash et al.
// 1994).
TEST(Solids, AreNotPurerThanWater) {
  const Reckoned shown = reckoned(solids, "--shown-ppm 0 --factor 0.5");
  EXPECT_EQ(result(shown, "reagent_water"), nullptr);
  EXPECT_THAT(shown.hints, Contains(HasSubstr("reckon zero")));
  const Reckoned less = reckoned(solids, "--conductivity-at-25-us-cm 0.03 --factor 0.5");
  EXPECT_THAT(less.hints, Contains(HasSubstr("there cannot be less")));
  const Reckoned pure = reckoned(solids, "--conductivity-at-25-us-cm 0.055 --factor 0.5");
  EXPECT_THAT(pure.hints, Not(Contains(HasSubstr("there cannot be less"))));
}

// ASTM D1193-99e1, table 1, conductivity at 25 degrees: I 0.056, II 1.0, III 0.25, IV 5.0 uS/cm.
TEST(ReagentWater, IsByConductivity) {
  EXPECT_EQ(reagent_water({0.056}), "type I, II, III, IV");
  EXPECT_EQ(reagent_water({0.06}), "type II, III, IV");
  EXPECT_EQ(reagent_water({0.5}), "type II, IV");
  EXPECT_EQ(reagent_water({2}), "type IV");
  EXPECT_EQ(reagent_water({5.1}), "none");
}

// A step of 1 ppm that is rounded hides 0.5 ppm, 1 uS/cm at a factor of 0.5; one that is cut off
// twice that. How much salt that is: 03_trace_salt, 0.5 mg/L has 1.137 and 1 mg/L 2.219 uS/cm.
TEST(Zero, IsARange) {
  const Reckoned worse = reckoned(zero, "--factor 0.5");
  EXPECT_NEAR(number(worse, "conductivity_us_cm"), 2, 1e-9);
  EXPECT_LT(number(worse, "sodium_chloride_mg_l"), 1);
  EXPECT_GT(number(worse, "sodium_chloride_mg_l"), 0.5);
  EXPECT_EQ(text(worse, "reagent_water"), "type IV");
  EXPECT_THAT(worse.hints, Contains(HasSubstr("cuts off")));
  const Reckoned rounds = reckoned(zero, "--factor 0.5 --display rounds");
  EXPECT_NEAR(number(rounds, "resistivity_megohm_cm"), 1, 1e-9);
  EXPECT_EQ(text(rounds, "reagent_water"), "type II, IV");
  EXPECT_THAT(rounds.hints, Not(Contains(HasSubstr("cuts off"))));
  EXPECT_THAT(rounds.cautions, Contains(HasSubstr("not drinking water")));
}

}  // namespace
}  // namespace tidewright::commands::reckon
