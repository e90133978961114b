#include "daemon/clock.hpp"

#include <gtest/gtest.h>

#include "tests/support/eventually.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;

Instant world() {
  return std::chrono::floor<Duration>(std::chrono::system_clock::now()).time_since_epoch() +
         Instant{};
}

TEST(Clock, BeginsAtTheWallClock) {
  const Clock clock(long_ago, {}, 1);
  EXPECT_LT(std::chrono::abs(clock.now() - world()), 1000ms);
  EXPECT_LT(std::chrono::abs(clock.wall().ahead), 1000ms);
}

TEST(Clock, NeverGoesBackBehindTheRunBefore) {
  const Instant before = world() + 24h;  // the wall clock was set back meanwhile
  const Clock clock(before, {}, 1);
  EXPECT_GE(clock.now(), before);
  EXPECT_LT(std::chrono::abs(clock.wall().ahead + 24h), 1000ms);
}

TEST(Clock, GoesOnByTheWallItBelievedIn) {
  // The room's time was an hour behind the wall; a restart after 10 minutes is 10 minutes.
  const WallClock wall{1h, {}};
  const Instant before = world() - 1h - 10ms * 60 * 1000;
  const Clock clock(before, wall, 1);
  EXPECT_LT(std::chrono::abs(clock.now() - before - 10ms * 60 * 1000), 1000ms * 60);
}

TEST(Clock, APaceMakesTheRoomsTimeRunFaster) {
  const Clock clock(long_ago, {}, 100);
  const Instant begin = clock.now();
  EXPECT_TRUE(support::eventually(200ms, [&] { return clock.now() - begin >= 2000ms; }));
  EXPECT_LE(clock.until(clock.now() + 1000ms), 10ms);
  EXPECT_EQ(clock.until(begin), 0ms);
  EXPECT_LE(clock.until(never), 1h);
}

TEST(Clock, AStepIsWhatAPersonWouldNotice) {
  EXPECT_FALSE(stepped({}, {Duration{900}, {}}));
  EXPECT_TRUE(stepped({}, {Duration{-1500}, {}}));
  EXPECT_TRUE(stepped({}, {Duration{0}, std::chrono::minutes{60}}));
}

}  // namespace
}  // namespace tidewright
