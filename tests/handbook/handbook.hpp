// Every number of core/water against numbers from outside: each cell of a table is one test.
//
//   INSTANTIATE_TEST_SUITE_P(
//       Density, Handbook,
//       testing::ValuesIn(checks("seawater/04_density_grid.csv", "density_teos10",
//                                {{"rho_teos10", Standing::library, [](const Row& row) { ... }}})),
//       place);
//
// The allowed difference stands in tables/tolerances.csv: absolute plus relative to the expected.
#pragma once

#include <gtest/gtest.h>

#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "core/water/answer.hpp"
#include "tests/handbook/table.hpp"

namespace tidewright::handbook {

// Where an expected value comes from.
enum class Standing {
  published,   // read in a publication, or in a file that quotes it
  library,     // made by an independent library
  computed,    // computed from the published formula by somebody else's program, or arithmetic
  remembered,  // from memory, or common practice
};

// NaN for a refusal.
template <class T>
double or_nan(const water::Answer<T>& answer) {
  if (!answer) return std::numeric_limits<double>::quiet_NaN();
  if constexpr (std::is_same_v<T, double>) {
    return *answer;
  } else {
    return answer->value;
  }
}

struct Column {
  std::string name;
  // None: by the row's own column `tag`.
  std::optional<Standing> standing;
  // What our code answers; NaN for a refusal, which fails.
  std::function<double(const Row&)> ours;
};

struct Check {
  std::shared_ptr<const Table> table;
  std::size_t line;  // index in table->lines
  Column column;
  Standing standing;
  double allowed;
  std::string claim;
};

// What is checked for gtest's parameter: each row and column, but for cells that are empty and rows
// that `wanted` leaves out. `claim` is the public function that the checks stand for.
std::vector<Check> checks(
    const std::string& table, const std::string& claim, const std::vector<Column>& columns,
    const std::function<bool(const Row&)>& wanted = [](const Row&) { return true; });

// The test's name: table, line and column.
std::string place(const testing::TestParamInfo<Check>& info);

class Handbook : public testing::TestWithParam<Check> {};

}  // namespace tidewright::handbook
