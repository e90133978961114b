#include "tests/handbook/handbook.hpp"

#include <fmt/format.h>

#include <cctype>
#include <cmath>
#include <map>
#include <set>
#include <sstream>
#include <stdexcept>

namespace tidewright::handbook {
namespace {

struct Tolerance {
  double absolute;
  double relative;
};

bool lists(const std::string& columns, const std::string& wanted) {
  std::istringstream all(columns);
  for (std::string one; std::getline(all, one, ';');) {
    if (one == wanted) return true;
  }
  return false;
}

// Table and column.
using Place = std::pair<std::string, std::string>;

// Filled as the tallies below.
std::set<Place>& checked() {
  static std::set<Place> all;
  return all;
}

const Table& tolerances() {
  static const Table all = read_table("tolerances.csv");
  return all;
}

Tolerance tolerance(const std::string& table, const std::string& column) {
  for (const Table::Line& line : tolerances().lines) {
    const Row row(tolerances(), line);
    if (row.text("table") == table && lists(row.text("expected_columns(;)"), column)) {
      checked().insert({table, column});
      return {row["tol_abs"], row["tol_rel"]};
    }
  }
  throw std::runtime_error(fmt::format("tolerances.csv: no line for {} {}", table, column));
}

Standing standing_of(const Row& row) {
  const std::string& tag = row.text("tag");
  if (tag.starts_with("published")) return Standing::published;
  if (tag.starts_with("computed")) return Standing::computed;
  if (tag.starts_with("from memory") || tag.starts_with("common practice")) {
    return Standing::remembered;
  }
  throw std::runtime_error(fmt::format("{}:{}: tag {}", row.table().file, row.number(), tag));
}

using Tally = std::map<Standing, int>;

// By claim. Filled while gtest collects its parameters, before the first test runs.
std::map<std::string, Tally>& tallies() {
  static std::map<std::string, Tally> all;
  return all;
}

// What is arithmetic alone, so that a computed value says as much as a printed one.
const std::set<std::string> arithmetic{
    // Balances of water or salt: what comes in goes out.
    "salt_passage", "membranes_in_series", "feed_of_product", "cycle_load", "resin_load",
    // Sums, differences and quotients of what is measured, or of numbers that are checked.
    "net_driving_pressure", "equivalents_of_alkalinity", "hours_to_fill", "flood",
    "carbon_capacity_grams", "carbon_life", "shown",
    // An exponential or a logarithm by its definition.
    "time_constant_minutes", "minutes_until_within", "start_up_cost", "permeate_ph",
    // A line through two points of the curve that litres_to and breakthrough_at are checked on.
    "breakthrough_through",
    // The earliest of three dates.
    "carbon_left",
    // A sum of squares; checked by many draws, too.
    "salinity_estimate",
    // Solid geometry.
    "volume_at", "depth_at",
    // The geometric series, and the exponential that many small changes come to.
    "after_changes", "steady_after_change", "steady_before_change", "changes_needed", "after_days",
    "steady"};

// Columns that no check of one cell can be made of.
const std::set<Place> without_a_check{
    // Of deep water, which core/water does not know: only the surface's part is asked for.
    {"seawater/01_pss78_check.csv", "Rt_indep"},
    {"seawater/01_pss78_check.csv", "Rt_pub"},
    // Words, ranges and limits: each has a test of its own.
    {"seawater/01b_teos10_check.csv", "gsw_here"},
    {"seawater/14c_hydration_bounds.csv", "crystal_water_g_per_kg"},
    {"purifier/11_fao29.csv", "none"},
    {"purifier/11_fao29.csv", "slight_to_moderate"},
    {"purifier/11_fao29.csv", "severe"},
    {"purifier/11_hardness.csv", "class"},
    // No function here: the density of brine, potassium chloride.
    {"seawater/10_nacl_crc.csv", "density_20_g_cm3"},
    {"purifier/03_temp_comp_factors.csv", "f25_from_KCl"},
    // What goes in.
    {"purifier/09_product_vs_concentrate.csv", "product_Lh_24h"},
    {"purifier/11_sar.csv", "HCO3/Ca"}};

}  // namespace

std::vector<Check> checks(const std::string& file, const std::string& claim,
                          const std::vector<Column>& columns,
                          const std::function<bool(const Row&)>& wanted) {
  const auto table = std::make_shared<const Table>(read_table(file));
  std::vector<Check> all;
  for (const Column& column : columns) {
    const Tolerance allowed = tolerance(file, column.name);
    for (std::size_t i = 0; i < table->lines.size(); ++i) {
      const Row row(*table, table->lines[i]);
      if (row.empty(column.name) || !wanted(row)) continue;
      const Standing standing = column.standing ? *column.standing : standing_of(row);
      all.push_back({table, i, column, standing,
                     allowed.absolute + allowed.relative * std::abs(row[column.name]), claim});
      ++tallies()[claim][standing];
    }
  }
  return all;
}

std::string place(const testing::TestParamInfo<Check>& info) {
  const Check& check = info.param;
  std::string name = fmt::format("{}_line_{}_{}", check.table->file,
                                 check.table->lines[check.line].number, check.column.name);
  for (char& c : name) {
    if (!std::isalnum(static_cast<unsigned char>(c))) c = '_';
  }
  return name;
}

TEST_P(Handbook, Agrees) {
  const Check& check = GetParam();
  const Row row(*check.table, check.table->lines[check.line]);
  const double expected = row[check.column.name];
  const double ours = check.column.ours(row);
  EXPECT_LE(std::abs(ours - expected), check.allowed)
      << fmt::format("{}:{} {}: expected {} within {}, ours {}\n{}{}", check.table->file,
                     row.number(), check.column.name, expected, check.allowed, ours,
                     check.table->source, row.text_or_none("source"));
}

TEST(HandbookTally, SaysWhatTheNumbersStandOn) {
  Tally sum;
  for (const auto& [claim, standings] : tallies()) {
    const Tally& tally = standings;  // clang 14 captures no structured binding
    const auto count = [&tally](Standing standing) {
      const auto at = tally.find(standing);
      return at == tally.end() ? 0 : at->second;
    };
    fmt::print("{:<32} {:>5} published {:>5} library {:>5} computed {:>5} remembered\n", claim,
               count(Standing::published), count(Standing::library), count(Standing::computed),
               count(Standing::remembered));
    EXPECT_TRUE(arithmetic.contains(claim) ||
                count(Standing::published) + count(Standing::library) > 0)
        << claim << " stands on computed values alone";
    for (const auto& [standing, number] : tally) sum[standing] += number;
  }
  fmt::print("{:<32} {:>5} published {:>5} library {:>5} computed {:>5} remembered\n", "all",
             sum[Standing::published], sum[Standing::library], sum[Standing::computed],
             sum[Standing::remembered]);
  EXPECT_GE(sum[Standing::published] + sum[Standing::library] + sum[Standing::computed], 1200);
}

// A column with a tolerance that nobody checks is a number that looks as if it carried something.
TEST(HandbookTally, LeavesNoColumnOut) {
  for (const Table::Line& line : tolerances().lines) {
    const Row row(tolerances(), line);
    std::istringstream columns(row.text("expected_columns(;)"));
    for (std::string one; std::getline(columns, one, ';');) {
      const Place where{row.text("table"), one};
      EXPECT_TRUE(checked().contains(where) || without_a_check.contains(where))
          << where.first << ' ' << one;
    }
  }
}

}  // namespace tidewright::handbook
