#include "core/water/irrigation.hpp"

#include <map>

#include "core/water/hardness.hpp"
#include "core/water/sodium_hazard.hpp"
#include "tests/handbook/handbook.hpp"

namespace tidewright::handbook {
namespace {

using water::IrrigationItem;
using water::Restriction;

const std::string hazards = "purifier/11_sar.csv";

water::IrrigationIons ions(const Row& row) {
  return {{row["Na_meL"]}, {row["Ca_meL"]}, {row["Mg_meL"]}, {row["HCO3+CO3_meL"]}};
}

MillisiemensPerCm conductivity(const Row& row) { return {row["ECw_dSm"]}; }

INSTANTIATE_TEST_SUITE_P(SodiumAdsorptionRatio, Handbook,
                         testing::ValuesIn(checks(hazards, "sodium_adsorption_ratio",
                                                  {{"SAR",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(water::sodium_adsorption_ratio(
                                                          ions(row)));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(AdjustedSodiumAdsorptionRatio, Handbook,
                         testing::ValuesIn(checks(hazards, "adjusted_sodium_adsorption_ratio",
                                                  {{"adj_RNa",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(
                                                          water::adjusted_sodium_adsorption_ratio(
                                                              ions(row), conductivity(row)));
                                                    }}})),
                         place);

INSTANTIATE_TEST_SUITE_P(
    ResidualSodiumCarbonate, Handbook,
    testing::ValuesIn(checks(hazards, "residual_sodium_carbonate",
                             {{"RSC",
                               {},
                               [](const Row& row) {
                                 return or_nan(water::residual_sodium_carbonate(ions(row)));
                               }}})),
    place);

INSTANTIATE_TEST_SUITE_P(LeachingRequirement, Handbook,
                         testing::ValuesIn(checks(hazards, "leaching_requirement",
                                                  {{"leaching_requirement",
                                                    {},
                                                    [](const Row& row) {
                                                      return or_nan(water::leaching_requirement(
                                                          conductivity(row), {1.5}));
                                                    }}})),
                         place);

double calcium_left(double ratio, double decisiemens_m) {
  return or_nan(water::calcium_in_soil_water(ratio, {decisiemens_m}));
}

INSTANTIATE_TEST_SUITE_P(CalciumOfTheExample, Handbook,
                         testing::ValuesIn(checks(hazards, "calcium_in_soil_water",
                                                  {{"Cax_table11",
                                                    {},
                                                    [](const Row& row) {
                                                      return calcium_left(row["HCO3/Ca"],
                                                                          row["ECw_dSm"]);
                                                    }}})),
                         place);

std::vector<Column> calcium_columns() {
  std::vector<Column> columns;
  for (const char* decisiemens_m :
       {"0.1", "0.2", "0.3", "0.5", "0.7", "1", "1.5", "2", "3", "4", "6", "8"}) {
    columns.push_back({std::string("EC_") + decisiemens_m, {}, [decisiemens_m](const Row& row) {
                         return calcium_left(row["HCO3_over_Ca"], std::stod(decisiemens_m));
                       }});
  }
  return columns;
}

INSTANTIATE_TEST_SUITE_P(CalciumInSoilWater, Handbook,
                         testing::ValuesIn(checks("purifier/11_fao_table11_cax.csv",
                                                  "calcium_in_soil_water", calcium_columns())),
                         place);

double beyond(const std::string& cell) { return std::stod(cell.substr(1)); }

// Just below and just above a limit, in whatever unit.
constexpr double little = 1e-9;

TEST(Irrigation, HasEachLimitOfTheTable) {
  const std::map<std::string, IrrigationItem> items{
      {"salinity ECw", IrrigationItem::conductivity},
      {"salinity TDS", IrrigationItem::dissolved_solids},
      {"sodium, surface irrigation", IrrigationItem::sodium_surface},
      {"sodium, sprinkler", IrrigationItem::sodium_sprinkler},
      {"chloride, surface", IrrigationItem::chloride_surface},
      {"chloride, sprinkler", IrrigationItem::chloride_sprinkler},
      {"boron", IrrigationItem::boron},
      {"nitrate-N", IrrigationItem::nitrate_nitrogen},
      {"bicarbonate (overhead sprinkling only)", IrrigationItem::bicarbonate_sprinkler}};
  const Table table = read_table("purifier/11_fao29.csv");
  int found = 0;
  for (const Table::Line& line : table.lines) {
    const Row row(table, line);
    const auto item = items.find(row.text("item"));
    if (item == items.end()) continue;
    ++found;
    const double slight = beyond(row.text("none"));
    EXPECT_EQ(*water::restriction(item->second, slight - little), Restriction::none);
    EXPECT_EQ(*water::restriction(item->second, slight + little), Restriction::slight_to_moderate);
    if (row.empty("severe")) {
      EXPECT_EQ(*water::restriction(item->second, 1e6), Restriction::slight_to_moderate);
    } else {
      const double severe = beyond(row.text("severe"));
      EXPECT_EQ(*water::restriction(item->second, severe - little),
                Restriction::slight_to_moderate);
      EXPECT_EQ(*water::restriction(item->second, severe + little), Restriction::severe);
    }
  }
  EXPECT_EQ(found, 9);
}

TEST(Irrigation, HasEachPairOfInfiltrationOfTheTable) {
  const std::map<std::string, double> ratios{{"infiltration SAR 0-3 and ECw", 1},
                                             {"infiltration SAR 3-6 and ECw", 5},
                                             {"infiltration SAR 6-12 and ECw", 9},
                                             {"infiltration SAR 12-20 and ECw", 16},
                                             {"infiltration SAR 20-40 and ECw", 30}};
  const Table table = read_table("purifier/11_fao29.csv");
  int found = 0;
  for (const Table::Line& line : table.lines) {
    const Row row(table, line);
    const auto ratio = ratios.find(row.text("item"));
    if (ratio == ratios.end()) continue;
    ++found;
    const auto ours = [&](double decisiemens_m) {
      return *water::infiltration_restriction(ratio->second, {decisiemens_m});
    };
    const double none = beyond(row.text("none"));
    const double severe = beyond(row.text("severe"));
    EXPECT_EQ(ours(none + little), Restriction::none);
    EXPECT_EQ(ours(none - little), Restriction::slight_to_moderate);
    EXPECT_EQ(ours(severe + little), Restriction::slight_to_moderate);
    EXPECT_EQ(ours(severe - little), Restriction::severe);
  }
  EXPECT_EQ(found, 5);
}

TEST(Irrigation, KnowsTheNormalRangeOfPh) {
  // FAO 29 table 1: 6.5 to 8.4.
  EXPECT_FALSE(*water::irrigation_ph_is_normal(6.4));
  EXPECT_TRUE(*water::irrigation_ph_is_normal(6.5));
  EXPECT_TRUE(*water::irrigation_ph_is_normal(8.4));
  EXPECT_FALSE(*water::irrigation_ph_is_normal(8.5));
}

TEST(Hardness, HasTheClassesOfTheGeologicalSurvey) {
  // US Geological Survey: 0 to 60, 61 to 120, 121 to 180, more than 180 mg/L.
  EXPECT_EQ(*water::hardness_class({60}), water::Hardness::soft);
  EXPECT_EQ(*water::hardness_class({61}), water::Hardness::moderately_hard);
  EXPECT_EQ(*water::hardness_class({120}), water::Hardness::moderately_hard);
  EXPECT_EQ(*water::hardness_class({121}), water::Hardness::hard);
  EXPECT_EQ(*water::hardness_class({180}), water::Hardness::hard);
  EXPECT_EQ(*water::hardness_class({181}), water::Hardness::very_hard);
}

TEST(Hardness, CountsGrains) {
  // Water Conditioning & Purification, March 2011: 1 grain per gallon is 17.1 ppm.
  EXPECT_NEAR(*water::grains_per_gallon({17.1}), 1, 0.003);
}

water::Langelier langelier(const Row& row) {
  return *water::langelier(
      {{row["T_C"]}, {row["tds"]}, {row["Ca_hardness_CaCO3"]}, {row["alk_CaCO3"]}, row["pH"]});
}

std::vector<Column> langelier_columns(std::optional<Standing> standing) {
  return {{"pHs", standing, [](const Row& row) { return langelier(row).saturation_ph; }},
          {"LSI", standing, [](const Row& row) { return langelier(row).index; }}};
}

INSTANTIATE_TEST_SUITE_P(Langelier, Handbook,
                         testing::ValuesIn(checks("purifier/11_langelier.csv", "langelier",
                                                  langelier_columns({}))),
                         place);

INSTANTIATE_TEST_SUITE_P(LangelierPublished, Handbook,
                         testing::ValuesIn(checks("purifier/11_langelier_published.csv",
                                                  "langelier",
                                                  langelier_columns(Standing::published))),
                         place);

}  // namespace
}  // namespace tidewright::handbook
