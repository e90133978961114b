#include "daemon/mqtt/hub_births.hpp"

#include <gtest/gtest.h>

#include <set>

namespace tidewright::mqtt {
namespace {

using namespace std::chrono_literals;
using Clock = HubBirths::Clock;

// The bounds are the project's own: each birth is answered within 10 s, and no storm.
TEST(HubBirths, TwentyInAMinuteAreAllAnsweredInTimeByFewAnswers) {
  for (std::uint32_t seed = 1; seed < 100; ++seed) {
    HubBirths births(seed);
    std::optional<Clock::time_point> waits;  // the first birth that has no answer yet
    int answers = 0;
    for (auto now = Clock::time_point{1h}; now < Clock::time_point{1h} + 80s; now += 100ms) {
      const auto since = now - Clock::time_point{1h};
      if (since < 60s && since % 3s == 0s) {
        births.heard(now);
        if (!waits) waits = now;
      }
      if (!births.due() || now < *births.due()) continue;
      ASSERT_TRUE(waits);
      EXPECT_LE(now - *waits, 10s);
      births.answered(now);
      waits.reset();
      ++answers;
    }
    EXPECT_FALSE(waits);
    EXPECT_GE(answers, 1);
    EXPECT_LE(answers, 9);
  }
}

TEST(HubBirths, TwoDevicesDoNotAnswerAtOnce) {
  std::set<Clock::duration> waits;
  for (std::uint32_t seed = 1; seed <= 20; ++seed) {
    HubBirths births(seed * 100'000'007);
    births.heard(Clock::time_point{1h});
    waits.insert(*births.due() - Clock::time_point{1h});
  }
  EXPECT_GT(waits.size(), 10u);
}

}  // namespace
}  // namespace tidewright::mqtt
