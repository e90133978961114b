// Reads the household's file for a command, and tells the person at the terminal what is wrong.
#pragma once

#include <optional>
#include <string>

#include "config/household.hpp"

namespace tidewright::commands {

struct HouseholdFile {
  std::optional<config::Household> household;
  std::string text;   // as it stands in the file
  int exit_code = 0;  // without a household: 66 no such file, 78 wrong
};

// Every problem is printed on stderr, with its place.
HouseholdFile read_household(const std::string& path);

}  // namespace tidewright::commands
