#include "daemon/store/state_text.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/rooms.hpp"
#include "tests/support/state_samples.hpp"

namespace tidewright::store {
namespace {

using support::every_field_set;
using support::full_room;

TEST(StateTextTest, AFreshStateHasNothingToSay) { EXPECT_EQ(to_text(full_room(), State{}), ""); }

TEST(StateTextTest, EveryFieldComesBack) {
  const auto room = full_room();
  const State state = every_field_set(room);
  State read;
  ASSERT_TRUE(from_text(room, to_text(room, state), read));
  EXPECT_EQ(to_text(room, read), to_text(room, state));
}

TEST(StateTextTest, EveryFieldIsWritten) {
  const auto room = full_room();
  const std::string text = to_text(room, every_field_set(room));
  const auto lines = std::count(text.begin(), text.end(), '\n');
  EXPECT_EQ(lines, support::field_count(room));
}

TEST(StateTextTest, ThingsKeepTheirStateByNameWhenTheFileIsReordered) {
  auto room = full_room();
  State state;
  state.signals[0].value = 1;
  state.signals[1].value = 96.25;
  state.ledger.working[1].total = Duration{1234567};
  state.latches[room::RuleId::leak].set = true;
  state.latches[room::RuleId::leak].cause = {.why = Why::wet, .subject = 0, .numbers = {1, 2, 3}};
  const std::string text = to_text(room, state);

  std::swap(room.instruments[0], room.instruments[1]);
  room.actuators.erase(room.actuators.begin());
  State read;
  ASSERT_TRUE(from_text(room, text, read));
  EXPECT_EQ(read.signals[1].value, 1);
  EXPECT_EQ(read.signals[0].value, 96.25);
  EXPECT_EQ(read.ledger.working[0].total, Duration{1234567});
  EXPECT_TRUE(read.latches[room::RuleId::leak].set);
  EXPECT_EQ(read.latches[room::RuleId::leak].cause.subject, 1);
}

TEST(StateTextTest, ALatchOutlivesTheSensorThatSetIt) {
  auto room = full_room();
  State state;
  state.latches[room::RuleId::leak].set = true;
  state.latches[room::RuleId::leak].cause = {.why = Why::wet, .subject = 0, .numbers = {}};
  const std::string text = to_text(room, state);
  room.instruments.erase(room.instruments.begin());
  State read;
  ASSERT_TRUE(from_text(room, text, read));
  EXPECT_TRUE(read.latches[room::RuleId::leak].set);
  EXPECT_EQ(read.latches[room::RuleId::leak].cause.subject, no_subject);
}

TEST(StateTextTest, SaysWhenALineCannotBeRead) {
  State state;
  EXPECT_FALSE(from_text(full_room(), "latches.leak.set maybe\n", state));
  EXPECT_FALSE(from_text(full_room(), "latches.leak.cause wet floor 1 2\n", state));
  EXPECT_FALSE(from_text(full_room(), "nonsense\n", state));
  EXPECT_FALSE(from_text(full_room(), "ledger.made 1,5\n", state));
  // What would lead step() out of an array or a sum out of its type.
  EXPECT_FALSE(from_text(full_room(), "ledger.product.count 200\n", state));
  EXPECT_FALSE(from_text(full_room(), "ledger.posted 9223372036854775806\n", state));
  EXPECT_TRUE(from_text(full_room(), "alarms.leak.shelved_until 9223372036854775807\n", state));
}

}  // namespace
}  // namespace tidewright::store
