#include "daemon/mqtt/back_off.hpp"

#include <gtest/gtest.h>

namespace tidewright::mqtt {
namespace {

using namespace std::chrono_literals;

// The bounds are the project's own: 0.2 s doubled to 5 s, shortened by at most half.
TEST(BackOff, GrowsToItsCapAndStaysThere) {
  BackOff back_off(1);
  Milliseconds whole = 200ms;
  for (int i = 0; i < 20; ++i) {
    const Milliseconds wait = back_off.wait(0ms);
    EXPECT_LE(wait, whole);
    EXPECT_GE(wait, whole / 2);
    whole = std::min<Milliseconds>(2 * whole, 5s);
  }
}

TEST(BackOff, AConnectionThatLastedShortlyIsNoSuccess) {
  BackOff back_off(1);
  for (int i = 0; i < 10; ++i) back_off.wait(0ms);
  EXPECT_GE(back_off.wait(59s), 2'500ms);
  EXPECT_LE(back_off.wait(60s), 200ms);
}

TEST(BackOff, TwoClientsDoNotComeAtOnce) {
  BackOff one(1);
  BackOff two(2);
  int same = 0;
  for (int i = 0; i < 20; ++i) same += one.wait(0ms) == two.wait(0ms) ? 1 : 0;
  EXPECT_LT(same, 5);
}

}  // namespace
}  // namespace tidewright::mqtt
