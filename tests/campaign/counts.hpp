// What the campaign has counted, and the file in which it can be taken up again.
#pragma once

#include <cstdint>
#include <map>
#include <string>

#include "tests/campaign/recipe.hpp"

namespace tidewright::campaign {

// Which fault began in which phase, and what was found within two hours of it: as words.
struct Cell {
  std::string fault, phase, finding;
  auto operator<=>(const Cell&) const = default;
};

struct Count {
  std::size_t times = 0;
  std::size_t tries = 0;  // nights that sought it
  Recipe first;           // of the first night that reached it
};

struct Counts {
  std::uint64_t incidents = 0, violations = 0, steps = 0, wet = 0, trips = 0;
  double made = 0, possible = 0, core_seconds = 0;  // litres, litres, seconds
  std::map<Cell, Count> cells;
};

// Nothing counted yet where there is no such file.
Counts load(const std::string& file);
void save(const Counts&, const std::string& file);

}  // namespace tidewright::campaign
