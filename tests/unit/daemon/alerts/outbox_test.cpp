// The letters that wait: their order, their end, and that nothing is lost over the disk.
#include "daemon/alerts/outbox.hpp"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/rooms.hpp"

namespace tidewright::alerts {
namespace {

using namespace std::chrono_literals;
using post::Fate;
using post::Way;
using testing::ElementsAre;
using testing::IsEmpty;

const Instant noon{std::chrono::hours{1000}};

Composed letter(std::uint32_t number, Way way, std::string of = {}, Instant not_before = noon) {
  return {{fmt::format("abc-{}", number), way, fmt::format("{{\"n\":{}}}", number)},
          std::move(of),
          not_before};
}

std::vector<std::string> due(const Outbox& outbox, Way way, Instant now = noon) {
  std::vector<std::string> notices;
  for (const post::Letter& each : outbox.due(way, now)) notices.push_back(each.notice);
  return notices;
}

TEST(Outbox, GivesEachWayItsLettersInTheirOrderUntilTheyHaveArrived) {
  Outbox outbox("abc", 0);
  outbox.put(1, {letter(1, Way::webhook), letter(1, Way::mail)});
  outbox.put(2, {letter(2, Way::webhook)});
  EXPECT_THAT(due(outbox, Way::webhook), ElementsAre("abc-1", "abc-2"));
  EXPECT_THAT(due(outbox, Way::mail), ElementsAre("abc-1"));
  EXPECT_TRUE(outbox.settle({"abc-1", Way::webhook, Fate::delivered, ""}));
  EXPECT_TRUE(outbox.settle({"abc-2", Way::webhook, Fate::failed, "no route"}));
  EXPECT_THAT(due(outbox, Way::webhook), ElementsAre("abc-2"));
  EXPECT_THAT(due(outbox, Way::mail), ElementsAre("abc-1"));
  EXPECT_EQ(outbox.taken(), 2u);
}

TEST(Outbox, ComesBackFromItsTextAsItWas) {
  Outbox outbox("abc", 0);
  outbox.put(1, {letter(1, Way::mail, "leak 1", noon + 1h)});
  outbox.put(7, {letter(7, Way::webhook)});
  outbox.settle({"abc-7", Way::webhook, Fate::refused, ""});
  const auto back = Outbox::of(outbox.to_text());
  ASSERT_TRUE(back);
  EXPECT_EQ(back->to_text(), outbox.to_text());
  EXPECT_EQ(back->instance(), "abc");
  EXPECT_EQ(back->taken(), 7u);
  EXPECT_EQ(back->due(Way::webhook, noon), outbox.due(Way::webhook, noon));
  EXPECT_EQ(back->next_due(Way::mail, noon), noon + 1h);
  for (const char* text : {"", "{}", "[]", R"({"instance":"a","taken":-1})",
                           R"({"instance":"a","taken":1,"letters":[{}]})"}) {
    EXPECT_FALSE(Outbox::of(text)) << text;
  }
}

TEST(Outbox, GoesOnWhereItWas) {
  Outbox kept("abc", 0);
  kept.put(5, {letter(5, Way::mail)});
  const Outbox same = Outbox::resumed(kept, "def", 5);
  EXPECT_EQ(same.to_text(), kept.to_text());
  EXPECT_EQ(Outbox::resumed(kept, "def", 9).taken(), 5u) << "6 to 9 are still to be told";
}

TEST(Outbox, OfAStateThatForgotGivesNoNumberTwice) {
  Outbox kept("abc", 0);
  kept.put(5, {letter(5, Way::mail)});
  const Outbox anew = Outbox::resumed(kept, "def", 4);
  EXPECT_EQ(anew.instance(), "def");
  EXPECT_EQ(anew.taken(), 4u);
  EXPECT_THAT(due(anew, Way::mail), ElementsAre("abc-5")) << "what waits is not lost";
}

TEST(Outbox, ThatIsTheFirstTellsNothingOld) {
  const Outbox first = Outbox::resumed(std::nullopt, "def", 7);
  EXPECT_EQ(first.taken(), 7u);
  EXPECT_EQ(first.waiting(Way::mail), 0u);
}

TEST(Outbox, TakesWhatTheStateAnnouncesOnce) {
  config::Household household;
  household.room = support::minimal_room();
  household.alerts.mail = config::Mail{};
  State state;
  state.notices.last = 20;
  for (std::uint32_t n = 5; n <= 20; ++n) {
    state.notices.items[n % state::notices_kept] = {n, noon, {}, 0, Announced::test, {}};
  }
  Outbox outbox("abc", 18);
  EXPECT_TRUE(outbox.take(household, state).news);
  EXPECT_THAT(due(outbox, Way::mail), ElementsAre("abc-19", "abc-20"));
  EXPECT_FALSE(outbox.take(household, state).news);
  Outbox late("late", 1);
  EXPECT_TRUE(late.take(household, state).news);
  EXPECT_EQ(late.waiting(Way::mail), state::notices_kept) << "what the state still knows";
  EXPECT_EQ(due(late, Way::mail).front(), "late-5");
}

TEST(Outbox, WhatMayNotDisturbWaitsForItsTime) {
  Outbox outbox("abc", 0);
  outbox.put(1, {letter(1, Way::mail, "", noon + 8h)});
  outbox.put(2, {letter(2, Way::mail)});
  EXPECT_THAT(due(outbox, Way::mail), ElementsAre("abc-2"));
  EXPECT_EQ(outbox.next_due(Way::mail, noon), noon + 8h);
  EXPECT_EQ(outbox.next_due(Way::webhook, noon), never);
  EXPECT_THAT(due(outbox, Way::mail, noon + 8h), ElementsAre("abc-1", "abc-2"));
  EXPECT_EQ(outbox.next_due(Way::mail, noon + 8h), never);
}

TEST(Outbox, AReminderTakesThePlaceOfOneThatStillWaits) {
  Outbox outbox("abc", 0);
  outbox.put(1, {letter(1, Way::mail)});
  outbox.put(2, {letter(2, Way::mail, "leak 1"), letter(2, Way::webhook, "leak 1")});
  outbox.put(3, {letter(3, Way::mail, "frost 1")});
  outbox.put(4, {letter(4, Way::mail, "leak 1")});
  EXPECT_THAT(due(outbox, Way::mail), ElementsAre("abc-1", "abc-3", "abc-4"));
  EXPECT_THAT(due(outbox, Way::webhook), ElementsAre("abc-2"));
}

TEST(Outbox, WhatIsRefusedAgainAndAgainIsGivenUp) {
  Outbox outbox("abc", 0);
  outbox.put(1, {letter(1, Way::mail)});
  for (int i = 1; i < refusals_most; ++i) {
    EXPECT_TRUE(outbox.settle({"abc-1", Way::mail, Fate::refused, "550"}));
    EXPECT_EQ(outbox.waiting(Way::mail), 1u);
  }
  EXPECT_FALSE(outbox.settle({"abc-1", Way::mail, Fate::refused, "550"}));
  EXPECT_EQ(outbox.waiting(Way::mail), 0u);
  EXPECT_TRUE(outbox.settle({"abc-1", Way::mail, Fate::refused, "550"})) << "it is gone";
}

TEST(Outbox, IsBoundedForEachWay) {
  Outbox outbox("abc", 0);
  outbox.put(1, {letter(1, Way::webhook)});
  for (std::uint32_t n = 2; n < 2 + letters_most; ++n) {
    EXPECT_EQ(outbox.put(n, {letter(n, Way::mail)}), 0u);
  }
  EXPECT_EQ(outbox.put(1000, {letter(1000, Way::mail)}), 1u);
  EXPECT_EQ(outbox.waiting(Way::mail), letters_most);
  EXPECT_EQ(due(outbox, Way::mail).front(), "abc-3") << "the oldest goes";
  EXPECT_EQ(outbox.waiting(Way::webhook), 1u);
}

TEST(Outbox, AWayThatIsNotWantedAnyMoreHasNoLetters) {
  Outbox outbox("abc", 0);
  outbox.put(1, {letter(1, Way::webhook), letter(1, Way::mail)});
  outbox.drop(Way::mail);
  EXPECT_THAT(due(outbox, Way::mail), IsEmpty());
  EXPECT_THAT(due(outbox, Way::webhook), ElementsAre("abc-1"));
}

}  // namespace
}  // namespace tidewright::alerts
