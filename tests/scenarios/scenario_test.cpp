// Plays every *.scenario of this folder. What its lines may say stands in cast.hpp.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "tests/scenarios/cast.hpp"

namespace tidewright::scenarios {
namespace {

std::vector<std::filesystem::path> scenario_files() {
  std::vector<std::filesystem::path> files;
  const std::filesystem::path folder{TIDEWRIGHT_SOURCE_DIR "/tests/scenarios"};
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".scenario") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string text_of(const std::filesystem::path& file) {
  std::ostringstream text;
  text << std::ifstream(file).rdbuf();
  return text.str();
}

class Scenario : public testing::TestWithParam<std::filesystem::path> {};

TEST_P(Scenario, GoesAsWritten) {
  const std::string file = GetParam().string();
  const Script script = read_script(text_of(GetParam()));
  fmt::print("{}\n", script.about);
  Cast cast(script.setting);
  for (const Line& line : script.lines) {
    const std::string wrong = cast.play(line);
    if (!wrong.empty()) {
      ADD_FAILURE_AT(file.c_str(), line.number) << wrong;
      return;
    }
  }
  EXPECT_EQ(cast.leftovers(), "");
}

INSTANTIATE_TEST_SUITE_P(All, Scenario, testing::ValuesIn(scenario_files()),
                         [](const auto& param) { return param.param.stem().string(); });

}  // namespace
}  // namespace tidewright::scenarios
