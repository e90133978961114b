// What the functions of seawater say at the ends of what they were made for.
#include <gtest/gtest.h>

#include <limits>

#include "core/report/outside.hpp"
#include "core/water/brine_scale.hpp"
#include "core/water/conductivity_compensation.hpp"
#include "core/water/practical_salinity.hpp"
#include "core/water/reference_salt.hpp"
#include "core/water/refraction.hpp"
#include "core/water/seawater.hpp"
#include "core/water/solutes.hpp"
#include "core/water/specific_gravity.hpp"

namespace tidewright::water {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

// By definition: Millero et al. 2008, 35.16504 g/kg at 35.
static_assert(absolute_salinity(PracticalSalinity{35}).value == 35.16504);

// UNESCO 44: the scale is defined for 2 to 42 and -2 to 35 degrees.
TEST(PracticalSalinityRange, IsThatOfTheScale) {
  EXPECT_TRUE(practical_salinity(MillisiemensPerCm{53}, Celsius{25}).in_range());
  const auto warm = practical_salinity(MillisiemensPerCm{62}, Celsius{36});
  ASSERT_TRUE(warm);
  EXPECT_FALSE(warm.in_range());
  EXPECT_EQ(report::words(*warm.outside()), "temperature 36 °C is outside -2 to 35 °C");
  const auto brackish = practical_salinity(MillisiemensPerCm{2}, Celsius{25});
  ASSERT_TRUE(brackish);
  EXPECT_FALSE(brackish.in_range());
  EXPECT_EQ(brackish.outside()->range.name, "practical salinity");
}

TEST(PracticalSalinityRange, RefusesWhatNoWaterConducts) {
  EXPECT_FALSE(practical_salinity(MillisiemensPerCm{-0.1}, Celsius{25}));
  EXPECT_FALSE(practical_salinity(MillisiemensPerCm{199}, Celsius{25}));
  EXPECT_FALSE(practical_salinity(MillisiemensPerCm{nan}, Celsius{25}));
  EXPECT_FALSE(practical_salinity(MillisiemensPerCm{53}, Celsius{infinity}));
  // The same number in uS/cm is a common slip.
  const auto slip = practical_salinity(MillisiemensPerCm{53'000}, Celsius{25});
  EXPECT_EQ(report::words(*slip.outside()), "conductivity 53000 mS/cm is outside 0 to 200 mS/cm");
}

TEST(PracticalSalinityRange, BeginsAtNothing) {
  EXPECT_EQ(practical_salinity(MillisiemensPerCm{0}, Celsius{25})->value, 0);
  EXPECT_EQ(practical_salinity(MillisiemensPerCm{0.0005}, Celsius{25})->value, 0);
  EXPECT_EQ(conductivity(PracticalSalinity{0}, Celsius{25})->value, 0);
}

TEST(PracticalSalinityRange, HasNoStepWhereDilutedSeawaterBegins) {
  for (const double celsius : {-5, 0, 15, 25, 35, 60}) {
    const double edge = conductivity(PracticalSalinity{2}, Celsius{celsius})->value;
    const auto at = [&](double factor) {
      return practical_salinity(MillisiemensPerCm{edge * factor}, Celsius{celsius})->value;
    };
    EXPECT_NEAR(at(1 - 1e-9), at(1 + 1e-9), 1e-8) << celsius;
  }
}

TEST(SeawaterRange, SaysWhatIsExtrapolatedAndRefusesTheRest) {
  EXPECT_TRUE(density_teos10(GramsPerKilogram{42}, Celsius{40}).in_range());
  EXPECT_TRUE(density_teos10(GramsPerKilogram{42.1}, Celsius{40}));
  EXPECT_FALSE(density_teos10(GramsPerKilogram{42.1}, Celsius{40}).in_range());
  EXPECT_FALSE(density_teos10(GramsPerKilogram{35}, Celsius{60.1}));
  EXPECT_FALSE(enthalpy(GramsPerKilogram{-0.1}, Celsius{25}));
  EXPECT_FALSE(temperature_of_enthalpy(GramsPerKilogram{35}, JoulesPerKilogram{1e6}));
  EXPECT_EQ(report::words(*salinity_of_density(KilogramsPerCubicMetre{1}, Celsius{25}).outside()),
            // python3-gsw 3.6.16: rho_t_exact of 0 and 120 g/kg.
            "density 1 kg/m3 is outside 997.0476 to 1087.91 kg/m3");
}

TEST(SpecificGravityRange, IsSaidInSpecificGravity) {
  const auto density_taken_for_it = salinity_of_gravity(1023, GravityScale::celsius_25_25);
  ASSERT_FALSE(density_taken_for_it);
  EXPECT_EQ(density_taken_for_it.outside()->range.name, "specific gravity");
  EXPECT_EQ(density_taken_for_it.outside()->range.low, 1);
  EXPECT_EQ(salinity_of_gravity(1, GravityScale::celsius_25_25)->value, 0);
  EXPECT_FALSE(salinity_of_hydrometer(1.025, Celsius{70}, GravityScale::celsius_25_25));
}

TEST(RefractionRange, RefusesWhatIsNoWater) {
  EXPECT_FALSE(salinity_of_refraction(1.0003, Celsius{20}));
  EXPECT_FALSE(salinity_of_refraction(1.34, Celsius{41}));
  EXPECT_FALSE(refractive_index(PracticalSalinity{45}, Celsius{20}).in_range());
  EXPECT_FALSE(refractive_index_quan_fry(PracticalSalinity{35}, Celsius{20}, 300));
  EXPECT_FALSE(brine_index(GramsPerKilogram{61}));
  EXPECT_FALSE(brine_scale_reading(PracticalSalinity{65}));
  // Both scales have the same zero: pure water.
  EXPECT_EQ(brine_scale_reading(PracticalSalinity{0})->value, 0);
}

TEST(CompensationRange, IsThatOfTheLaw) {
  EXPECT_TRUE(factor_to_25(iso_7888, Celsius{35}));
  EXPECT_FALSE(factor_to_25(iso_7888, Celsius{35.1}));
  EXPECT_FALSE(factor_to_25({}, Celsius{-1}));
  EXPECT_FALSE(factor_to_25({Compensation::Law::linear, 4}, Celsius{25}));
  EXPECT_EQ(*factor_to_25({Compensation::Law::none}, Celsius{10}), 1);
  EXPECT_FALSE(salinity_of_compensated(MillisiemensPerCm{nan}, Celsius{25}, iso_7888));
  EXPECT_FALSE(seawater_factor_to_25(PracticalSalinity{0.05}, Celsius{25}));
  EXPECT_FALSE(dissolved_solids_factor(PracticalSalinity{0.05}));
}

}  // namespace
}  // namespace tidewright::water
