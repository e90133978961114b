#include "core/picture/judged.hpp"

#include <gtest/gtest.h>

#include "core/base/reason.hpp"
#include "tests/support/rooms.hpp"

namespace tidewright::picture {
namespace {

using namespace std::chrono_literals;

// Newest first, one every five minutes and litre.
state::Samples samples(std::initializer_list<float> ppm) {
  state::Samples made;
  Instant at{std::chrono::hours{1000}};
  float litres = 100;
  for (const float value : ppm) {
    made.items[made.count++] = {at, value, litres};
    at -= 5min;
    litres -= 1;
  }
  return made;
}

TEST(Judged, NeedsThreeReadingsAndTwoLitres) {
  const room::Room room = support::minimal_room();
  EXPECT_FALSE(judge_samples(room, samples({3, 3})));
  const auto judged = judge_samples(room, samples({3, 3, 3}));
  ASSERT_TRUE(judged);
  EXPECT_DOUBLE_EQ(judged->litres.value, 2);
}

TEST(Judged, OneHighReadingIsOutvoted) {
  const auto judged = judge_samples(support::minimal_room(), samples({9, 0, 0, 9}));
  ASSERT_TRUE(judged);
  EXPECT_DOUBLE_EQ(judged->ppm.value, 0);
}

TEST(Judged, TheMedianOfAnEvenCountLiesBetween) {
  room::Room room = support::minimal_room();
  room.purifier->judged_litres = Litres{3};
  const auto judged = judge_samples(room, samples({1, 4, 2, 3}));
  ASSERT_TRUE(judged);
  EXPECT_DOUBLE_EQ(judged->ppm.value, 2.5);
}

TEST(Judged, TheLowestIsKnownOnceAsManyAreKeptAsCanBe) {
  const room::Room room = support::minimal_room();
  EXPECT_FALSE(judge_samples(room, samples({1, 1, 1, 1, 1, 1, 1, 1}))->lowest);
  EXPECT_EQ(judge_samples(room, samples({1, 1, 1, 1, 1, 1, 1, 1, 1}))->lowest->value, 1);
  EXPECT_EQ(judge_samples(room, samples({1, 1, 1, 1, 1, 1, 1, 1, 0}))->lowest->value, 0);
}

TEST(Judged, WithoutASwitchedPumpOnlyTheTimeCounts) {
  room::Room room = support::minimal_room();
  room.purifier->driven_by = no_subject;
  state::Samples still = samples({2, 2, 2});
  for (auto& sample : still.items) sample.litres = 0;
  EXPECT_TRUE(judge_samples(room, still));
}

}  // namespace
}  // namespace tidewright::picture
