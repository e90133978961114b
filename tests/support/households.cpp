#include "tests/support/households.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "config/reader/reader.hpp"

namespace tidewright::support {

std::vector<Household> households() {
  std::vector<Household> found;
  for (const auto& entry : std::filesystem::directory_iterator(TIDEWRIGHT_SOURCE_DIR "/config")) {
    if (entry.path().extension() != ".toml") continue;
    std::ostringstream text;
    text << std::ifstream(entry.path()).rdbuf();
    const config::Understood understood = config::read(text.str());
    const std::string name = entry.path().filename();
    if (!understood.household) throw std::runtime_error(name + " is not understood");
    found.push_back({name, understood.household->room});
  }
  std::sort(found.begin(), found.end(),
            [](const Household& a, const Household& b) { return a.name < b.name; });
  return found;
}

const Household& household_named(const std::vector<Household>& all, const std::string& name) {
  for (const Household& household : all) {
    if (household.name == name) return household;
  }
  throw std::runtime_error("there is no household " + name);
}

}  // namespace tidewright::support
