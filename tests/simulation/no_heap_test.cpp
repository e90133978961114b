// step() allocates nothing: counted through a day of a room with everything in it, over every kind
// of event. The whole binary's operator new is counted, but only while step() runs.
#include <gtest/gtest.h>

#include <cstdlib>
#include <new>

#include "core/step.hpp"
#include "tests/support/day.hpp"
#include "tests/support/rooms.hpp"

namespace {

bool counting = false;
std::size_t allocations = 0;

void* counted_or_null(std::size_t size) noexcept {
  if (counting) ++allocations;
  return std::malloc(size == 0 ? 1 : size);
}

void* counted(std::size_t size) {
  if (void* memory = counted_or_null(size)) return memory;
  throw std::bad_alloc();
}

}  // namespace

void* operator new(std::size_t size) { return counted(size); }
void* operator new[](std::size_t size) { return counted(size); }
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
  return counted_or_null(size);
}
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept {
  return counted_or_null(size);
}
// Not drawn into others: the compiler would see memory of `new` given to free().
[[gnu::noinline]] void operator delete(void* memory) noexcept { std::free(memory); }
[[gnu::noinline]] void operator delete[](void* memory) noexcept { std::free(memory); }
[[gnu::noinline]] void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }
[[gnu::noinline]] void operator delete[](void* memory, std::size_t) noexcept { std::free(memory); }

namespace tidewright {
namespace {

TEST(Step, AllocatesNothing) {
  const room::Room room = support::full_room();
  const std::vector<Event> day = support::eventful_day(room);
  State state;
  Effects effects;
  allocations = 0;
  for (const Event& event : day) {
    counting = true;
    step(room, state, event, effects);
    counting = false;
  }
  EXPECT_GT(day.size(), 10'000U);
  EXPECT_EQ(allocations, 0U);
}

// The counter itself works.
TEST(Step, AnAllocationWouldBeCounted) {
  allocations = 0;
  counting = true;
  std::vector<int> something(10);
  counting = false;
  EXPECT_EQ(something.size(), 10U);
  EXPECT_EQ(allocations, 1U);
}

}  // namespace
}  // namespace tidewright
