#include "config/reader/nearest.hpp"

#include <gtest/gtest.h>

#include <array>

namespace tidewright::config {
namespace {

using namespace std::string_view_literals;
constexpr std::array keys{"volume"sv, "level"sv, "low"sv, "start_below"sv, "on"sv, "off"sv};

TEST(Nearest, OneLetterMoreLessOrOther) {
  EXPECT_EQ(nearest("volum", keys), "volume");
  EXPECT_EQ(nearest("volumes", keys), "volume");
  EXPECT_EQ(nearest("volune", keys), "volume");
}

TEST(Nearest, TwoLettersSwappedAreOneStep) { EXPECT_EQ(nearest("lwo", keys), "low"); }

TEST(Nearest, LongWordsMayBeThreeStepsOff) {
  EXPECT_EQ(nearest("start-belo", keys), "start_below");
  EXPECT_EQ(nearest("stat_blows", keys), "start_below");
}

TEST(Nearest, NothingIsBetterThanAnythingFar) {
  EXPECT_EQ(nearest("colour", keys), "");
  EXPECT_EQ(nearest("xy", keys), "");
  EXPECT_EQ(nearest("", keys), "");
  EXPECT_EQ(nearest(std::string(100'000, 'x'), keys), "");
}

}  // namespace
}  // namespace tidewright::config
