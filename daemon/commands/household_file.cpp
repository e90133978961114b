#include "daemon/commands/household_file.hpp"

#include <sysexits.h>

#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "config/reader/reader.hpp"

namespace tidewright::commands {

HouseholdFile read_household(const std::string& path) {
  HouseholdFile file;
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream text;
  std::error_code unknown;
  const bool readable = stream && !std::filesystem::is_directory(path, unknown);
  if (readable) text << stream.rdbuf();  // fails, but is not bad, where the file is empty
  if (!readable || text.bad()) {
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
