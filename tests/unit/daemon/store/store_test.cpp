// The store on real files: what comes back, and what a person is told when it cannot.
#include "daemon/store/store.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <vector>

#include "daemon/store/journal_file.hpp"
#include "daemon/store/line.hpp"
#include "daemon/store/state_text.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/rooms.hpp"
#include "tests/support/state_samples.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::store {
namespace {

using support::answer_to;
using support::full_room;
using support::latch;
using support::MemoryDirectory;
using support::open_store;
using testing::HasSubstr;
using testing::IsEmpty;

const Instant noon{Duration{1'760'000'000'000}};
const auto minute = std::chrono::minutes{1};

std::vector<std::string> kinds_in(const std::filesystem::path& directory) {
  std::vector<std::string> kinds;
  JournalFile::for_each_line(directory / "journal.db", [&](const std::string& text) {
    Line line;
    if (parse(text, full_room(), line) != nullptr) {
      kinds.emplace_back("unreadable");
    } else if (std::holds_alternative<HouseholdText>(line.what)) {
      kinds.emplace_back("household");
    } else if (const auto* state = std::get_if<StateText>(&line.what)) {
      kinds.emplace_back(state->fresh ? "run" : "state");
    } else {
      kinds.push_back("event " + std::to_string(line.sequence) + " " + line.raw);
    }
  });
  return kinds;
}

TEST(StoreTest, TheFirstStartIsClean) {
  const MemoryDirectory directory;
  const auto store = open_store(directory.path() / "made" / "for it", full_room());
  EXPECT_TRUE(store->found().clean);
  EXPECT_EQ(store->found().last, long_ago);
  EXPECT_THAT(store->remarks(), IsEmpty());
  EXPECT_TRUE(store->committed().ok);
}

TEST(StoreTest, EveryFieldComesBackAfterACleanStop) {
  const MemoryDirectory directory;
  const auto room = full_room();
  State state = support::every_field_set(room);
  state.circumstances.now = noon;
  {
    const auto store = open_store(directory.path(), room);
    store->record({.at = noon, .what = Stopping{}}, {}, state);
    EXPECT_TRUE(store->close());
  }
  const auto store = open_store(directory.path(), room);
  EXPECT_TRUE(store->found().clean);
  EXPECT_EQ(store->found().last, noon);
  EXPECT_EQ(to_text(room, store->found().state), to_text(room, state));
}

TEST(StoreTest, WithoutAWordOfPartingTheStartIsUnclean) {
  const MemoryDirectory directory;
  {
    const auto store = open_store(directory.path(), full_room());
    answer_to(*store, latch(*store, noon, 1));
  }
  const auto store = open_store(directory.path(), full_room());
  EXPECT_FALSE(store->found().clean);
  EXPECT_TRUE(store->found().state.latches[room::RuleId::leak].set);
}

TEST(StoreTest, AStartAloneIsNoCleanEnd) {
  const MemoryDirectory directory;
  open_store(directory.path(), full_room())->close();
  EXPECT_TRUE(open_store(directory.path(), full_room())->found().clean);
  EXPECT_FALSE(open_store(directory.path(), full_room())->found().clean);
}

TEST(StoreTest, TheJournalHasEachEventOnceInOrderOverRestarts) {
  const MemoryDirectory directory;
  for (int run = 0; run < 2; ++run) {
    const auto store = open_store(directory.path(), full_room());
    for (int i = 0; i < 3; ++i) {
      const Instant at = noon + run * minute + Duration{i};
      const auto sequence = store->record(support::wet_floor(at), "wet", support::latched(at, 1));
      EXPECT_EQ(sequence, static_cast<std::uint64_t>(run * 3 + i + 1));
    }
    EXPECT_TRUE(store->close());
  }
  auto kinds = kinds_in(directory.path());
  // A first start knows no instant; its second chapter follows with the first event's.
  std::erase(kinds, "state");
  EXPECT_THAT(kinds, testing::IsSupersetOf({"event 1 wet", "event 2 wet", "event 3 wet",
                                            "event 4 wet", "event 5 wet", "event 6 wet"}));
  EXPECT_EQ(std::count(kinds.begin(), kinds.end(), "run"), 2);
  EXPECT_EQ(std::count(kinds.begin(), kinds.end(), "unreadable"), 0);
}

TEST(StoreTest, ANewChapterOpensOnceAnHourAndTheRingDropsWholeOnes) {
  const MemoryDirectory directory;
  const auto hours = [](int h) { return noon + std::chrono::hours{h}; };
  {
    const auto store = open_store(directory.path(), full_room());
    for (int h = 0; h <= 20 * 24; h += 6) {
      answer_to(*store, latch(*store, hours(h), 1));
    }
    EXPECT_TRUE(store->close());
  }
  Instant first = never;
  std::vector<Instant> chapters;
  JournalFile::for_each_line(directory.path() / "journal.db", [&](const std::string& text) {
    Line line;
    ASSERT_EQ(parse(text, full_room(), line), nullptr);
    first = std::min(first, line.at);
    if (std::holds_alternative<HouseholdText>(line.what)) chapters.push_back(line.at);
  });
  EXPECT_EQ(first, chapters.front());
  EXPECT_LE(first, hours(6 * 24));
  EXPECT_GT(first, hours(5 * 24 - 6));
  EXPECT_GE(chapters.size(), 14U);
}

TEST(StoreTest, TheRingIsBoundedBySizeToo) {
  constexpr std::int64_t most = 1L * 1024 * 1024;
  const MemoryDirectory directory;
  {
    auto opened = Store::open(directory.path(), full_room(), "", {.bytes_most = most});
    const std::string raw(200, 'r');
    for (int i = 0; i < 20'000; ++i) {
      const Instant at = noon + Duration{i};
      const auto sequence =
          opened.store->record(support::wet_floor(at), raw, support::latched(at, 1));
      if (i % 500 != 0) continue;
      ASSERT_TRUE(support::eventually(std::chrono::seconds{10},
                                      [&] { return opened.store->recorded() >= sequence; }));
    }
    EXPECT_TRUE(opened.store->close());
  }
  // 20,000 lines of 300 bytes are six times the bound; a slice is dropped with each transaction.
  EXPECT_LE(static_cast<std::int64_t>(std::filesystem::file_size(directory.path() / "journal.db")),
            most * 5 / 4);
  const auto kinds = kinds_in(directory.path());
  EXPECT_GT(kinds.size(), 1'000U);
  EXPECT_GE(std::count(kinds.begin(), kinds.end(), "state"), 2);
}

TEST(StoreTest, AJournalThatIsHeldElsewhereDelaysNothingAndLosesNothing) {
  const MemoryDirectory directory;
  const auto store = open_store(directory.path(), full_room());
  answer_to(*store, latch(*store, noon, 1));
  const auto written = [&] { return kinds_in(directory.path()).size(); };
  ASSERT_TRUE(support::eventually(std::chrono::seconds{10}, [&] { return written() >= 3; }));
  {
    SQLite::Database other{(directory.path() / "journal.db").string(), SQLite::OPEN_READWRITE,
                           5000};
    SQLite::Transaction held{other, SQLite::TransactionBehavior::IMMEDIATE};
    const auto before = std::chrono::steady_clock::now();
    const auto sequence = latch(*store, noon + minute, 2);
    EXPECT_LT(std::chrono::steady_clock::now() - before, std::chrono::milliseconds{100});
    EXPECT_TRUE(answer_to(*store, sequence).ok);
  }
  EXPECT_TRUE(store->close());
  EXPECT_THAT(kinds_in(directory.path()), testing::Contains("event 2 wet"));
}

TEST(StoreTest, ManyMoreEventsThanTheQueueHoldsAreNotWaitedFor) {
  const MemoryDirectory directory;
  const auto store = open_store(directory.path(), full_room());
  SQLite::Database other{(directory.path() / "journal.db").string(), SQLite::OPEN_READWRITE, 5000};
  ASSERT_TRUE(support::eventually(std::chrono::seconds{10},
                                  [&] { return kinds_in(directory.path()).size() == 2; }));
  {
    SQLite::Transaction held{other, SQLite::TransactionBehavior::IMMEDIATE};
    for (int i = 0; i < 5000; ++i) {
      const Instant at = noon + Duration{i};
      store->record(support::wet_floor(at), "wet", support::latched(at, 1));
    }
    EXPECT_FALSE(answer_to(*store, latch(*store, noon + minute, 2)).ok) << "events were lost";
  }
  EXPECT_TRUE(support::eventually(std::chrono::seconds{20}, [&] { return store->committed().ok; }));
  answer_to(*store, latch(*store, noon + 2 * minute, 3));
  EXPECT_TRUE(store->close());
  const auto kinds = kinds_in(directory.path());
  EXPECT_THAT(kinds, testing::Contains("event 5002 wet"));
  EXPECT_GE(std::count(kinds.begin(), kinds.end(), "state"), 1) << "a chapter heals the gap";
}

TEST(StoreTest, TwoDaemonsDoNotShareADirectory) {
  const MemoryDirectory directory;
  const auto store = open_store(directory.path(), full_room());
  const auto second = Store::open(directory.path(), full_room(), "");
  EXPECT_EQ(second.store, nullptr);
  EXPECT_THAT(second.refused, HasSubstr("Another tidewright keeps its state in"));
}

TEST(StoreTest, WhatANewerVersionWroteIsLeftAlone) {
  for (const char* file : {"state.db", "journal.db"}) {
    const MemoryDirectory directory;
    open_store(directory.path(), full_room())->close();
    SQLite::Database{(directory.path() / file).string(), SQLite::OPEN_READWRITE}.exec(
        "PRAGMA user_version = 2");
    const auto opened = Store::open(directory.path(), full_room(), "");
    EXPECT_EQ(opened.store, nullptr);
    EXPECT_THAT(opened.refused, HasSubstr("was written by a newer tidewright: its format is 2, "
                                          "and this version knows 1"));
    EXPECT_THAT(opened.refused, HasSubstr(file));
  }
}

TEST(StoreTest, ARenamedSensorKeepsTheRest) {
  const MemoryDirectory directory;
  auto room = full_room();
  {
    const auto store = open_store(directory.path(), room);
    answer_to(*store, latch(*store, noon, 7));
    EXPECT_TRUE(store->close());
  }
  room.instruments[support::floor].id = "cellar";
  const auto store = open_store(directory.path(), room);
  EXPECT_TRUE(store->found().clean);
  const auto& leak = store->found().state.latches[room::RuleId::leak];
  EXPECT_TRUE(leak.set);
  EXPECT_EQ(leak.cause.subject, no_subject);
  EXPECT_EQ(store->found().state.alarms[room::RuleId::leak].occurrence, 7U);
}

}  // namespace
}  // namespace tidewright::store
