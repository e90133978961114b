// Each message that a wrong file can get: tests/broken/NAME.toml is read, and the whole text that
// a person then sees is NAME.expected. The expected texts were written from the grammar, by hand.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "config/reader/reader.hpp"

namespace tidewright::config {
namespace {

const std::filesystem::path folder =
    std::filesystem::path{TIDEWRIGHT_SOURCE_DIR} / "tests" / "broken";

std::string content(const std::filesystem::path& file) {
  std::ifstream stream{file};
  EXPECT_TRUE(stream) << file << " is missing";
  return {std::istreambuf_iterator<char>{stream}, {}};
}

std::vector<std::string> names_ending(std::string_view extension) {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator{folder}) {
    if (entry.path().extension() == extension) names.push_back(entry.path().stem());
  }
  std::sort(names.begin(), names.end());
  return names;
}

class Broken : public testing::TestWithParam<std::string> {};

TEST_P(Broken, FileGetsTheExpectedMessages) {
  const std::string name = GetParam() + ".toml";
  const std::string text = content(folder / name);
  const Understood understood = read(text);
  std::string shown;
  for (const Problem& problem : understood.problems) shown += render(problem, name, text);
  EXPECT_EQ(shown, content(folder / (GetParam() + ".expected")));
  EXPECT_FALSE(understood.household.has_value());
}

INSTANTIATE_TEST_SUITE_P(Files, Broken, testing::ValuesIn(names_ending(".toml")),
                         [](const auto& instance) { return instance.param; });

TEST(BrokenFiles, ComeInPairs) { EXPECT_EQ(names_ending(".toml"), names_ending(".expected")); }

TEST(BrokenFiles, AreMany) { EXPECT_GE(names_ending(".toml").size(), 40u); }

}  // namespace
}  // namespace tidewright::config
