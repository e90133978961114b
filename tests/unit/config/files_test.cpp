// The household files that come with the program are read without a problem.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "config/reader/keys.hpp"
#include "config/reader/reader.hpp"

namespace tidewright::config {
namespace {

const std::filesystem::path folder = std::filesystem::path{TIDEWRIGHT_SOURCE_DIR} / "config";

std::string content(const std::filesystem::path& file) {
  std::ifstream stream{file};
  return {std::istreambuf_iterator<char>{stream}, {}};
}

Household household(const std::string& name) {
  const std::string text = content(folder / name);
  const Understood understood = read(text);
  for (const Problem& problem : understood.problems) ADD_FAILURE() << render(problem, name, text);
  return understood.household.value_or(Household{});
}

TEST(HouseholdFiles, AllReadClean) {
  int files = 0;
  for (const auto& entry : std::filesystem::directory_iterator{folder}) {
    if (entry.path().extension() != ".toml") continue;
    household(entry.path().filename());
    ++files;
  }
  EXPECT_GE(files, 7);  // minimal, demo, full, and the rungs 1a, 1b, 2 and 3
}

// As the interface promises: these topics and nothing else.
TEST(HouseholdFiles, MinimalIsTheHouseholdThatIsPromised) {
  const Household minimal = household("minimal.toml");
  EXPECT_EQ(minimal.room.id, "waterroom");
  EXPECT_EQ(minimal.base, "tidewright");
  ASSERT_TRUE(minimal.room.vat.has_value());
  EXPECT_EQ(minimal.room.vat->id, "pure");
  EXPECT_DOUBLE_EQ(minimal.room.vat->capacity.value, 200);
  EXPECT_DOUBLE_EQ(minimal.room.vat->start_below->value, 80);  // 40 % of 200 L
  EXPECT_DOUBLE_EQ(minimal.room.vat->stop_at->value, 180);     // 90 % of 200 L

  std::vector<std::string> topics;
  for (const Source& source : minimal.sources) topics.push_back(source.topic);
  std::sort(topics.begin(), topics.end());
  EXPECT_EQ(topics,
            (std::vector<std::string>{"home/waterroom/booster", "home/waterroom/feed_tds",
                                      "home/waterroom/leak", "home/waterroom/product_tds",
                                      "home/waterroom/temperature", "home/waterroom/vat_level"}));
  ASSERT_EQ(minimal.outlets.size(), 1u);
  EXPECT_EQ(minimal.outlets[0].topic, "home/waterroom/booster/set");
  EXPECT_EQ(minimal.room.actuators[0].id, "booster");
  EXPECT_EQ(minimal.room.actuators[0].lease, std::chrono::seconds{120});
}

TEST(HouseholdFiles, FullHasEveryKey) {
  const std::string text = content(folder / "full.toml");
  for (const Key& key : keys()) {
    const std::string name{key.name};
    const bool stands = text.find(name + " = ") != std::string::npos ||
                        text.find("." + name + "]\n") != std::string::npos;
    EXPECT_TRUE(stands) << name;
  }
}

TEST(HouseholdFiles, MinimalIsUnderFortyLines) {
  const std::string text = content(folder / "minimal.toml");
  EXPECT_LT(std::count(text.begin(), text.end(), '\n'), 40);
}

}  // namespace
}  // namespace tidewright::config
