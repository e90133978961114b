#include "daemon/log/repeats.hpp"

#include <gmock/gmock.h>

namespace tidewright::log {
namespace {

using namespace std::chrono_literals;
using testing::ElementsAre;
using testing::IsEmpty;

const Repeats::Time start{std::chrono::hours{1}};

Line info(const std::string& text) { return {Level::info, text}; }

TEST(Repeats, SaysALineOnceAndThenItsCount) {
  Repeats repeats;
  EXPECT_THAT(repeats.said(Level::info, "a", start), ElementsAre(info("a")));
  for (int i = 0; i < 523; ++i) {
    EXPECT_THAT(repeats.said(Level::info, "a", start + 1min), IsEmpty());
  }
  EXPECT_THAT(repeats.due(start + 9min), IsEmpty());
  EXPECT_THAT(repeats.due(start + 10min), ElementsAre(info("a (x 523 in 10 min)")));
  EXPECT_THAT(repeats.said(Level::info, "a", start + 11min), ElementsAre(info("a")));
}

TEST(Repeats, ALineSaidOnceIsNotCounted) {
  Repeats repeats;
  repeats.said(Level::info, "a", start);
  EXPECT_THAT(repeats.due(start + 10min), IsEmpty());
}

TEST(Repeats, AtTheEndEveryCountIsSaid) {
  Repeats repeats;
  repeats.said(Level::info, "a", start);
  repeats.said(Level::info, "a", start);
  EXPECT_THAT(repeats.due(Repeats::Time::max()), ElementsAre(info("a (x 1 in 10 min)")));
}

TEST(Repeats, RemembersNoMoreThanItsBound) {
  Repeats repeats;
  for (int i = 0; i < 1000; ++i) repeats.said(Level::info, std::to_string(i), start);
  EXPECT_THAT(repeats.said(Level::info, "999", start), ElementsAre(info("999")));
  EXPECT_THAT(repeats.said(Level::info, "0", start), IsEmpty());
}

}  // namespace
}  // namespace tidewright::log
