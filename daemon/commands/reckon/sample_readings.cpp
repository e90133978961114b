#include "daemon/commands/reckon/sample_readings.hpp"

#include <fmt/format.h>

#include <array>

#include "core/water/brine_scale.hpp"
#include "core/water/practical_salinity.hpp"
#include "core/water/reference_salt.hpp"
#include "core/water/refraction.hpp"
#include "core/water/seawater.hpp"
#include "core/water/specific_gravity.hpp"
#include "core/water/uncertainty.hpp"
#include "daemon/commands/reckon/compensation_law.hpp"

namespace tidewright::commands::reckon {
namespace {

using water::GravityScale;

constexpr std::array scales{GravityScale::celsius_25_25,    GravityScale::celsius_20_20,
                            GravityScale::fahrenheit_60_60, GravityScale::celsius_17_5_17_5,
                            GravityScale::celsius_15_15,    GravityScale::celsius_15_4,
                            GravityScale::celsius_20_4,     GravityScale::celsius_25_4};

// Expanded, k = 2: see core/water/specific_gravity.hpp and brine_scale.hpp.
constexpr double gravity_uncertainty = 8e-6;
const double brine_uncertainty = water::coverage_factor * water::rectangular(0.3);

// What a meter shows for 25 °C by its law.
water::Answer<double> compensated(const water::Compensation& law, const Sample& sample) {
  const auto raw = water::conductivity(sample.salinity, sample.temperature);
  if (!raw) return *raw.outside();
  const auto factor = water::factor_to_25(law, sample.temperature);
  if (!factor) return *factor.outside();
  return raw->value * *factor;
}

// "specific_gravity_17_5_17_5"
std::string key(GravityScale scale) {
  std::string text = fmt::format("specific_gravity_{}", water::text(scale));
  for (char& letter : text) {
    if (letter == '/' || letter == '.') letter = '_';
    if (letter == 'F') letter = 'f';
  }
  return text;
}

}  // namespace

std::optional<water::Outside> add_conductivity(const Sample& sample,
                                               const water::Compensation& linear, Sheet& sheet) {
  constexpr auto unit = Unit::millisiemens_per_cm;
  const auto by_table = compensated(water::iso_7888, sample);
  sheet.add(water::conductivity(sample.salinity, sample.temperature),
            {"conductivity_ms_cm", "conductivity meter, raw", 0.0, unit, 3});
  sheet.add(compensated(linear, sample),
            {"linear_meter_ms_cm", "conductivity meter, " + words(linear), 0.0, unit, 3});
  if (by_table) {
    sheet.add(by_table, {"iso_7888_meter_ms_cm", "conductivity meter, ISO 7888", 0.0, unit, 3});
  }
  sheet.add(water::conductivity(sample.salinity, {25}),
            {"conductivity_at_25c_ms_cm", "true conductivity at 25 °C", 0.0, unit, 3});
  return by_table ? std::nullopt : by_table.outside();
}

void add_gravities(const Sample& sample, Sheet& sheet) {
  for (const GravityScale scale : scales) {
    sheet.add(water::specific_gravity(sample.salinity, scale),
              {key(scale), fmt::format("specific gravity {}", water::text(scale)), 0.0, Unit::none,
               5, gravity_uncertainty});
  }
}

void add_hydrometer(const Sample& sample, GravityScale scale, Sheet& sheet) {
  sheet.add(water::hydrometer_reading(sample.salinity, sample.temperature, scale),
            {"hydrometer_reading",
             fmt::format("glass hydrometer {} at {:.4g} °C", water::text(scale),
                         sample.temperature.value),
             0.0, Unit::none, 5});
}

void add_optics(const Sample& sample, Sheet& sheet) {
  sheet.add(
      water::refractive_index(sample.salinity, sample.temperature),
      {"refractive_index", fmt::format("refractive index at {:.4g} °C", sample.temperature.value),
       0.0, Unit::none, 6});
  sheet.add(water::brine_scale_reading(sample.salinity),
            {"brine_scale_g_kg", "refractometer graduated for brine", 0.0, Unit::grams_per_kilogram,
             2, brine_uncertainty});
}

void add_density(const Sample& sample, Sheet& sheet) {
  sheet.add(water::density(sample.salinity, sample.temperature),
            {"density_kg_m3", "density", 0.0, Unit::kilograms_per_cubic_metre, 3});
  sheet.add(water::Answer<GramsPerKilogram>{water::absolute_salinity(sample.salinity)},
            {"absolute_salinity_g_kg", "absolute salinity", 0.0, Unit::grams_per_kilogram, 3});
}

void add_calibration_fluid(const Sample& sample, Sheet& sheet) {
  const auto fluid = water::brine_scale_reading(sample.salinity);
  sheet.add(fluid, {"calibration_fluid_g_kg", "calibration fluid: pure sodium chloride", 0.0,
                    Unit::grams_per_kilogram, 2, brine_uncertainty});
  if (!fluid) return;
  const double per_water = 1 / (1 - fluid->value / 1000);
  sheet.add(water::Answer<double>{fluid->value * per_water},
            {"calibration_fluid_per_kg_water_g", "or so much into a kilogram of pure water", 0.0,
             Unit::grams, 2, brine_uncertainty * per_water * per_water});
}

}  // namespace tidewright::commands::reckon
