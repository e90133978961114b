// Tables whose numbers stand in words, or for one or two functions only.
#include <cmath>
#include <sstream>

#include "core/water/carbon_filter.hpp"
#include "core/water/dosing.hpp"
#include "core/water/hardness.hpp"
#include "core/water/reference_salt.hpp"
#include "core/water/resin.hpp"
#include "core/water/seawater.hpp"
#include "core/water/sediment_filter.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

Row row_of(const Table& table, const std::string& column, const std::string& wanted) {
  for (const Table::Line& line : table.lines) {
    const Row row(table, line);
    if (row.text(column) == wanted) return row;
  }
  throw std::runtime_error(table.file + ": no row " + wanted);
}

TEST(FilterFacts, GiveTheLimitsThatAreTaken) {
  const Table table = read_table("purifier/07_filter_facts.csv");
  const std::string change =
      row_of(table, "fact", "sediment cartridge by pressure drop").text("value");
  EXPECT_NE(change.find("change at 0.1 MPa (1 bar"), std::string::npos) << change;
  EXPECT_EQ(water::SedimentLimits{}.drop.value, 1);
  const std::string rise =
      row_of(table, "fact", "sediment cartridge by pressure drop, household").text("value");
  EXPECT_NE(rise.find("+0.7 bar"), std::string::npos) << rise;
  EXPECT_EQ(water::SedimentLimits{}.above_clean.value, 0.7);
  const std::string chlorine = row_of(table, "fact", "free chlorine at membrane").text("value");
  EXPECT_NE(chlorine.find("<0.1 mg/L"), std::string::npos) << chlorine;
  EXPECT_EQ(water::CarbonUse{}.allowed_behind.value, 0.1);
}

// "normal <0.05 MPa; change at 0.1 MPa": from the one to the other it is used up.
TEST(FilterFacts, GiveTheTwoEndsOfClogging) {
  EXPECT_NEAR(*water::clogging({0.5}, {100}, {0.5}, {100}), 0, 1e-12);
  EXPECT_NEAR(*water::clogging({0.5}, {100}, {1}, {100}), 1, 1e-12);
}

// Half of the rating is relied upon, where the table relies on less than all of it.
TEST(CarbonLife, ReliesOnHalfOfTheRating) {
  const Table table = read_table("purifier/07_carbon_life.csv");
  for (const Table::Line& line : table.lines) {
    const double derate = Row(table, line)["derate"];
    if (derate < 1) {
      EXPECT_EQ(water::CarbonFilter({{1000}, {2}}).derating, derate);
    }
  }
}

// "free chlorine <=1 mg/L: 12 months", ">1 mg/L: 6 months": a filter that its litres would carry
// for years ends by the calendar.
TEST(FilterFacts, GiveTheCalendarOfCarbon) {
  const Table table = read_table("purifier/07_filter_facts.csv");
  const auto months = [&](const std::string& fact) {
    return std::stod(
        row_of(table, "fact", "carbon prefilter change, free chlorine " + fact).text("value"));
  };
  const water::CarbonFilter large{{1e6}, {2}, 0.5};
  for (const auto& [fact, chlorine] : {std::pair{"<=1 mg/L", 1.0}, {">1 mg/L", 1.5}}) {
    const double allowed = 365.0 / 12 * months(fact);
    const water::CarbonUse use{{5000}, {100}, {chlorine}, 50, allowed, {}};
    EXPECT_NEAR(water::carbon_left(large, use)->days, allowed - 50, 1e-9);
    EXPECT_EQ(water::carbon_left(large, use)->by, water::CarbonEnd::calendar);
  }
}

TEST(ResinConstants, AreThoseOfTheTable) {
  const Table table = read_table("purifier/04_resin_constants.csv");
  const Row kilograins = row_of(table, "quantity", "1 eq/L in kilograins CaCO3 per ft3");
  EXPECT_NEAR(*water::equivalents_per_litre(kilograins["value"]), 1, 1e-5);
  EXPECT_NEAR(*water::grains_per_gallon({std::stod(
                  row_of(table, "quantity", "1 grain per US gal in mg/L CaCO3").text("value"))}),
              1, 1e-4);
}

TEST(Toolbox, HasTheSameSaltByDefinition) {
  const Table table = read_table("seawater/01b_teos10_check.csv");
  const Row row = row_of(table, "function", "SR_from_SP(35) g/kg (definition)");
  EXPECT_NEAR(water::absolute_salinity(PracticalSalinity{35}).value, row["published"], 1e-12);
}

// A published recipe of seawater of salinity 35, its salts as their usual hydrates.
TEST(Recipe, ComesToItsSalinityWithItsCrystalWater) {
  const double water_g_mol = 18.015;
  const Table table = read_table("seawater/14c_hydration_bounds.csv");
  double dry = 0;
  double crystal = 0;
  for (const Table::Line& line : table.lines) {
    const Row row(table, line);
    if (row.text("salt") == "TOTAL") {
      EXPECT_NEAR(dry, row["g_anhydrous_per_kg"], 2e-4);
      EXPECT_NEAR(crystal, row["crystal_water_g_per_kg"], 3e-4);
      continue;
    }
    EXPECT_NEAR(row["mol_per_kg"] * row["n_H2O"] * water_g_mol, row["crystal_water_g_per_kg"],
                2e-4);
    dry += row["g_anhydrous_per_kg"];
    crystal += row["mol_per_kg"] * row["n_H2O"] * water_g_mol;
  }
  const double fraction = crystal / (dry + crystal);
  EXPECT_NEAR(fraction, 0.149, 0.001);
  // What is taken if nothing is said lies between dry and that: common practice, no source.
  EXPECT_EQ(water::common_water_fraction, 0.05);
  EXPECT_GT(fraction, water::common_water_fraction);
  const Celsius room{25};
  const Litres fresh{(1000 - dry - crystal) / water::density_pure(room)->value};
  const Kilograms salt{(dry + crystal) / 1000};
  EXPECT_NEAR(water::salinity_of_batch(fresh, room, salt, fraction)->value, 35, 0.01);
  EXPECT_NEAR(*water::salt_yield(fresh, room, salt, {35}), 1 - fraction, 3e-4);
}

// "300 L x 5 K", near 20 degrees.
double expansion(const Row& row) {
  std::istringstream inputs(row.text("inputs"));
  double litres = 0;
  double kelvin = 0;
  std::string word;
  inputs >> litres >> word >> word >> kelvin;
  return litres * (water::density_pure({20 - kelvin / 2})->value /
                       water::density_pure({20 + kelvin / 2})->value -
                   1);
}

INSTANTIATE_TEST_SUITE_P(ThermalExpansion, Handbook,
                         testing::ValuesIn(checks("purifier/10_disturbances.csv", "density_pure",
                                                  {{"value", Standing::computed, expansion}},
                                                  [](const Row& row) {
                                                    return row.text("unit") == "L";
                                                  })),
                         place);

}  // namespace
}  // namespace tidewright::handbook
