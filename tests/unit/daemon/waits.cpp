#include "daemon/waits.hpp"

#include <gtest/gtest.h>
#include <poll.h>
#include <sys/eventfd.h>
#include <unistd.h>

#include <chrono>
#include <set>

namespace tidewright {
namespace {

using namespace std::chrono_literals;

bool readable(const Descriptor& descriptor, std::chrono::milliseconds patience) {
  pollfd look{descriptor.number(), POLLIN, 0};
  return poll(&look, 1, static_cast<int>(patience.count())) == 1;
}

TEST(Timer, RingsOnceUntilTaken) {
  Timer timer;
  EXPECT_FALSE(readable(timer, 0ms));
  timer.set(0ns, 0ns);  // what is overdue rings as well
  EXPECT_TRUE(readable(timer, 1s));
  timer.taken();
  EXPECT_FALSE(readable(timer, 0ms));
}

TEST(Timer, RingsAgainAfterItsInterval) {
  Timer timer;
  timer.set(1ms, 1ms);
  for (int i = 0; i < 3; ++i) {
    ASSERT_TRUE(readable(timer, 1s));
    timer.taken();
  }
}

TEST(Timer, ALaterSettingReplacesTheEarlier) {
  Timer timer;
  timer.set(1ms, 0ns);
  timer.set(1h, 0ns);
  EXPECT_FALSE(readable(timer, 50ms));
}

TEST(Waits, EachOfSeveralHasItsTurn) {
  const Descriptor first(eventfd(1, EFD_CLOEXEC));
  const Descriptor second(eventfd(1, EFD_CLOEXEC));
  Waits waits;
  waits.add(first.number(), 1);
  waits.add(second.number(), 2);
  // Both stay readable: neither may keep the other from being seen.
  std::set<std::uint32_t> seen;
  for (int i = 0; i < 4; ++i) seen.insert(waits.next().value_or(0));
  EXPECT_EQ(seen, (std::set<std::uint32_t>{1, 2}));
}

}  // namespace
}  // namespace tidewright
