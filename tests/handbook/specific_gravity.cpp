#include "core/water/specific_gravity.hpp"

#include "core/water/reference_salt.hpp"
#include "core/water/seawater.hpp"
#include "core/water/solutes.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

using water::GravityScale;

// The tables write "25/25 (77F/77F)".
GravityScale scale(const std::string& text) {
  return water::gravity_scale(text.substr(0, text.find(' '))).value();
}

PracticalSalinity salinity(double gravity, GravityScale scale) {
  const auto answer = water::salinity_of_gravity(gravity, scale);
  return {or_nan(answer)};
}

PracticalSalinity by_convention(const Row& row) {
  return salinity(row["SG"], scale(row.text("convention")));
}

Celsius sample_temperature(const Row& row) {
  return water::temperatures(scale(row.text("convention"))).sample;
}

double practical(const Row& row) { return by_convention(row).value; }
double absolute(const Row& row) { return water::absolute_salinity(by_convention(row)).value; }

double density(const Row& row) {
  return or_nan(water::density(by_convention(row), sample_temperature(row)));
}

double grams_per_litre(const Row& row) {
  return or_nan(water::salt_per_litre(by_convention(row), sample_temperature(row))) / 1000;
}

const auto library = Standing::library;

INSTANTIATE_TEST_SUITE_P(SalinityOfGravity, Handbook,
                         testing::ValuesIn(checks("seawater/05_sg_to_salinity.csv",
                                                  "salinity_of_gravity",
                                                  {{"S_P", library, practical},
                                                   {"SA_g_kg", library, absolute},
                                                   {"rho_at_T_kg_m3", library, density}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    SaltPerLitre, Handbook,
    testing::ValuesIn(checks("seawater/05_sg_to_salinity.csv", "salt_per_litre",
                             {{"salt_g_per_L_at_T", library, grams_per_litre}})),
    place);

double gravity(const Row& row) {
  return or_nan(
      water::specific_gravity(PracticalSalinity{row["S_P"]}, scale(row.text("convention"))));
}

INSTANTIATE_TEST_SUITE_P(SpecificGravity, Handbook,
                         testing::ValuesIn(checks("seawater/05b_salinity_to_sg.csv",
                                                  "specific_gravity", {{"SG", library, gravity}})),
                         place);

PracticalSalinity true_salinity(const Row& row) {
  return salinity(row["SG"], scale(row.text("true_convention")));
}

// What is taken for the salinity by who reads the number on another scale, less what it is.
Column read_as(const std::string& other) {
  return {"err_if_read_as_" + other, library, [other](const Row& row) {
            return (salinity(row["SG"], scale(other)) - true_salinity(row)).value;
          }};
}

INSTANTIATE_TEST_SUITE_P(
    GravityReadOnAnotherScale, Handbook,
    testing::ValuesIn(
        checks("seawater/06_sg_mixup.csv", "salinity_of_gravity",
               {{"S_P", library, [](const Row& row) { return true_salinity(row).value; }},
                {"SA_g_kg", library,
                 [](const Row& row) { return water::absolute_salinity(true_salinity(row)).value; }},
                read_as("25/25"),
                read_as("20/20"),
                read_as("60F/60F"),
                read_as("15/4"),
                read_as("17.5/17.5"),
                read_as("15/15"),
                read_as("20/4"),
                read_as("25/4")})),
    place);

double reading(const Row& row) {
  return or_nan(water::hydrometer_reading(PracticalSalinity{row["S_P"]}, Celsius{row["t_C"]},
                                          scale(row.text("scale"))));
}

// What the same water would show at the scale's own temperature, less what it shows.
double correction(const Row& row) {
  return or_nan(water::specific_gravity(PracticalSalinity{row["S_P"]}, scale(row.text("scale")))) -
         reading(row);
}

// Of who forgets the temperature.
double naive(const Row& row) { return salinity(reading(row), scale(row.text("scale"))).value; }

double naive_error(const Row& row) { return naive(row) - row["S_P"]; }

INSTANTIATE_TEST_SUITE_P(HydrometerReading, Handbook,
                         testing::ValuesIn(checks("seawater/07_hydrometer_temperature.csv",
                                                  "hydrometer_reading",
                                                  {{"reading_R", library, reading},
                                                   {"corr_to_add_SG", library, correction},
                                                   {"naive_S", library, naive},
                                                   {"naive_error_S", library, naive_error}})),
                         place);

double of_hydrometer(const Row& row) {
  return or_nan(water::salinity_of_hydrometer(row["reading_R"], Celsius{row["t_C"]},
                                              scale(row.text("scale"))));
}

INSTANTIATE_TEST_SUITE_P(SalinityOfHydrometer, Handbook,
                         testing::ValuesIn(checks("seawater/07_hydrometer_temperature.csv",
                                                  "salinity_of_hydrometer",
                                                  {{"S_P", library, of_hydrometer}})),
                         place);

}  // namespace
}  // namespace tidewright::handbook
