#include "daemon/store/queue.hpp"

#include <gtest/gtest.h>

#include <thread>

namespace tidewright::store {
namespace {

TEST(QueueTest, RefusesWhatItCannotHold) {
  Queue<int, 2> queue;
  for (const int value : {1, 2}) {
    *queue.place() = value;
    queue.hand_over();
  }
  EXPECT_EQ(queue.place(), nullptr);
  queue.done(1);
  ASSERT_NE(queue.place(), nullptr);
  EXPECT_EQ(queue.size(), 1U);
  EXPECT_EQ(queue[0], 2);
}

TEST(QueueTest, EveryValuePassesBetweenThreadsInOrder) {
  constexpr int values = 200'000;
  Queue<int, 64> queue;
  std::thread giver{[&] {
    for (int value = 0; value < values;) {
      if (int* place = queue.place()) {
        *place = value++;
        queue.hand_over();
      }
    }
  }};
  int expected = 0;
  bool in_order = true;
  while (expected < values) {
    const std::size_t count = queue.size();
    for (std::size_t i = 0; i < count; ++i) in_order = in_order && queue[i] == expected++;
    queue.done(count);
  }
  giver.join();
  EXPECT_TRUE(in_order);
}

TEST(LatestTest, OnlyTheNewestIsTaken) {
  Latest<int> latest;
  EXPECT_FALSE(latest.take());
  for (const int value : {1, 2, 3}) {
    latest.draft() = value;
    latest.hand_over();
  }
  EXPECT_TRUE(latest.take());
  EXPECT_EQ(latest.current(), 3);
  EXPECT_FALSE(latest.take());
  EXPECT_EQ(latest.current(), 3);
}

TEST(LatestTest, NoValueIsTornOrOlderThanTheOneBefore) {
  struct Pair {
    int first = 0, second = 0;
  };
  constexpr int values = 200'000;
  Latest<Pair> latest;
  std::thread giver{[&] {
    for (int value = 1; value <= values; ++value) {
      latest.draft() = {value, value};
      latest.hand_over();
    }
  }};
  int last = 0;
  bool whole = true;
  while (last < values) {
    if (!latest.take()) continue;
    const Pair pair = latest.current();
    whole = whole && pair.first == pair.second && pair.first > last;
    last = pair.first;
  }
  giver.join();
  EXPECT_TRUE(whole);
}

}  // namespace
}  // namespace tidewright::store
