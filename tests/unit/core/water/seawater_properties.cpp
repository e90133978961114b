// What must hold for every seawater, not only for those in a table.
#include <cmath>

#include "core/water/brine_scale.hpp"
#include "core/water/conductivity_compensation.hpp"
#include "core/water/practical_salinity.hpp"
#include "core/water/reference_salt.hpp"
#include "core/water/refraction.hpp"
#include "core/water/seawater.hpp"
#include "core/water/specific_gravity.hpp"
#include "core/water/temperature_scale.hpp"
#include "tests/support/between.hpp"

namespace tidewright::water {
namespace {

using support::between;

Celsius any_temperature() { return {*between(-2, 45)}; }
PracticalSalinity any_salinity() { return {*between(0, 55)}; }
GravityScale any_scale() { return static_cast<GravityScale>(*rc::gen::inRange(0, 8)); }

bool close(double one, double other, double distance) { return std::abs(one - other) <= distance; }

RC_GTEST_PROP(SeawaterInverse, SalinityOfConductivity, ()) {
  const Celsius t = any_temperature();
  const PracticalSalinity s = any_salinity();
  const auto conducted = conductivity(s, t);
  RC_ASSERT(close(practical_salinity(*conducted, t)->value, s.value, 1e-9));
}

RC_GTEST_PROP(SeawaterInverse, SalinityOfDensity, ()) {
  const Celsius t = any_temperature();
  const GramsPerKilogram s{*between(0, 120)};
  RC_ASSERT(close(salinity_of_density(*density_teos10(s, t), t)->value, s.value, 1e-8));
}

RC_GTEST_PROP(SeawaterInverse, TemperatureOfEnthalpy, ()) {
  const Celsius t{*between(-6, 60)};
  const GramsPerKilogram s{*between(0, 120)};
  RC_ASSERT(close(temperature_of_enthalpy(s, *enthalpy(s, t))->value, t.value, 1e-8));
}

RC_GTEST_PROP(SeawaterInverse, SalinityOfHydrometer, ()) {
  const Celsius t = any_temperature();
  const PracticalSalinity s = any_salinity();
  const GravityScale scale = any_scale();
  RC_ASSERT(close(salinity_of_hydrometer(*hydrometer_reading(s, t, scale), t, scale)->value,
                  s.value, 1e-8));
  RC_ASSERT(close(salinity_of_gravity(*specific_gravity(s, scale), scale)->value, s.value, 1e-8));
}

RC_GTEST_PROP(SeawaterInverse, SalinityOfRefraction, ()) {
  const Celsius t{*between(-2, 40)};
  const PracticalSalinity s = any_salinity();
  RC_ASSERT(close(salinity_of_refraction(*refractive_index(s, t), t)->value, s.value, 1e-8));
  RC_ASSERT(close(salinity_of_brine_scale(*brine_scale_reading(s))->value, s.value, 1e-8));
}

RC_GTEST_PROP(SeawaterInverse, SalinityOfCompensatedConductivity, ()) {
  const Celsius t{*between(0, 35)};
  const PracticalSalinity s = any_salinity();
  const double percent = *between(0, 3.5);
  for (const Compensation law : {Compensation{Compensation::Law::linear, percent}, iso_7888,
                                 Compensation{Compensation::Law::none}}) {
    const MillisiemensPerCm shown = *conductivity(s, t) * *factor_to_25(law, t);
    const auto found = salinity_of_compensated(shown, t, law);
    // A steep law can make more of seawater than any water has.
    const bool holds = found ? close(found->value, s.value, 1e-9) : shown.value > 200;
    RC_ASSERT(holds);
  }
}

RC_GTEST_PROP(SeawaterInverse, OfItsScales, ()) {
  const PracticalSalinity s = any_salinity();
  RC_ASSERT(close(practical_salinity(absolute_salinity(s)).value, s.value, 1e-12));
  const Celsius t = any_temperature();
  RC_ASSERT(close(from_ipts_68(degrees_ipts_68(t)).value, t.value, 1e-12));
}

// Saltier water conducts better, is heavier, bends light more and takes up less heat.
RC_GTEST_PROP(SeawaterOrder, BySalinity, ()) {
  const Celsius t{*between(-2, 40)};
  const PracticalSalinity less = any_salinity();
  const PracticalSalinity more{less.value + *between(0.001, 10)};
  const GravityScale scale = any_scale();
  RC_ASSERT(*conductivity(less, t) < *conductivity(more, t));
  RC_ASSERT(*density(less, t) < *density(more, t));
  RC_ASSERT(*refractive_index(less, t) < *refractive_index(more, t));
  RC_ASSERT(*hydrometer_reading(less, t, scale) < *hydrometer_reading(more, t, scale));
  RC_ASSERT(*heat_capacity(absolute_salinity(less), t) >
            *heat_capacity(absolute_salinity(more), t));
}

// From where the scale of salinity leaves zero, below 0.005 mS/cm, to where it ends in the coldest.
RC_GTEST_PROP(SeawaterOrder, ByConductivity, ()) {
  const Celsius t = any_temperature();
  const double less = *between(0.005, 46);
  const double more = less * (1 + *between(1e-6, 0.1));
  RC_ASSERT(*practical_salinity(MillisiemensPerCm{less}, t) <
            *practical_salinity(MillisiemensPerCm{more}, t));
}

// Warmer seawater conducts better and holds more heat; of salinity 30 and more it is also lighter,
// having no densest point above -2 degrees (common knowledge).
RC_GTEST_PROP(SeawaterOrder, ByTemperature, ()) {
  const PracticalSalinity s{*between(30, 55)};
  const Celsius cool = any_temperature();
  const Celsius warm{cool.value + *between(0.001, 10)};
  RC_ASSERT(*conductivity(s, cool) < *conductivity(s, warm));
  RC_ASSERT(*enthalpy(absolute_salinity(s), cool) < *enthalpy(absolute_salinity(s), warm));
  RC_ASSERT(*density(s, cool) > *density(s, warm));
}

}  // namespace
}  // namespace tidewright::water
