// How a night of the campaign came about: drawn by a seed, then varied, or joined by a fault.
// In the file of counts a step is `seed`, or `seed:fault:beside`; steps are joined by `+`.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/nights/fault.hpp"
#include "tests/support/households.hpp"

namespace tidewright::campaign {

struct Step {
  std::uint64_t seed = 0;
  const nights::FaultKind* joins = nullptr;  // null: drawn, or varied
  const nights::FaultKind* beside = nullptr;
};

using Recipe = std::vector<Step>;  // the first step draws; never empty where a night is made

std::string text(const Recipe&);
Recipe recipe_of(const std::string& text);

// Whose room it is, by the first seed.
const support::Household& household_of(const Recipe&, const std::vector<support::Household>&);
nights::Night night_of(const Recipe&, const support::Household&);

}  // namespace tidewright::campaign
