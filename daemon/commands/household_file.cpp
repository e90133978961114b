#include "daemon/commands/household_file.hpp"

#include <sysexits.h>

#include <fstream>
#include <iostream>
#include <sstream>

#include "config/reader/reader.hpp"

namespace tidewright::commands {

HouseholdFile read_household(const std::string& path) {
  HouseholdFile file;
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream text;
  if (!stream || !(text << stream.rdbuf())) {
    std::cerr << path << ": error: cannot be read.\n";
    file.exit_code = EX_NOINPUT;
    return file;
  }
  file.text = text.str();
  config::Understood understood = config::read(file.text);
  for (const config::Problem& problem : understood.problems) {
    std::cerr << config::render(problem, path, file.text);
  }
  file.household = std::move(understood.household);
  if (!file.household) file.exit_code = EX_CONFIG;
  return file;
}

}  // namespace tidewright::commands
