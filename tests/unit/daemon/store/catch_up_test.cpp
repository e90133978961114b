// What a crash leaves in the journal only is known after it all the same.
#include "daemon/store/catch_up.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

#include "daemon/store/state_text.hpp"
#include "tests/support/night.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::store {
namespace {

namespace fs = std::filesystem;
using support::MemoryDirectory;
using support::Night;

// A run that crashes; the last record of its state is from before the gauge's readings.
State crashed(const fs::path& directory) {
  Night night{directory};
  night.begin();
  const auto gauge = night.instrument(room::Quantity::level, room::Place::vat);
  for (int i = 0; i < 20; ++i) night.happen(Reading{.instrument = gauge, .value = 60.0 + i});
  night.wait_for_journal();
  return night.state();
}

TEST(CatchUpTest, AfterACrashTheStateIsTheOneAfterTheLastEvent) {
  const MemoryDirectory directory;
  const State before = crashed(directory.path());
  Night next{directory.path()};
  EXPECT_EQ(to_text(next.room(), next.state()), to_text(next.room(), before));
  EXPECT_EQ(next.store().found().last, before.circumstances.now);
  EXPECT_FALSE(next.store().found().clean);
  EXPECT_TRUE(next.store().found().readable);
}

TEST(CatchUpTest, CrashesInARowForgetNothing) {
  const MemoryDirectory directory;
  crashed(directory.path());
  const State before = crashed(directory.path());
  const Night next{directory.path()};
  EXPECT_EQ(to_text(next.room(), next.state()), to_text(next.room(), before));
}

TEST(CatchUpTest, TheHouseholdOfThenIsLivedThroughAndWhatKeepsItsNameIsKept) {
  const MemoryDirectory directory;
  const State before = crashed(directory.path());
  std::string renamed = support::minimal_household();
  const auto at = renamed.find("[leak.floor]");
  ASSERT_NE(at, std::string::npos);
  renamed.replace(at, 12, "[leak.cellar]");
  const Night next{directory.path(), renamed};
  const auto gauge = next.instrument(room::Quantity::level, room::Place::vat);
  EXPECT_EQ(next.state().signals[gauge].value, before.signals[gauge].value);
  const auto leak = next.instrument(room::Quantity::wetness, room::Place::floor);
  EXPECT_FALSE(next.state().signals[leak].seen);
}

TEST(CatchUpTest, ADamagedStateIsLivedAgainFromTheJournalAndATripIsAssumed) {
  const MemoryDirectory directory;
  const State before = crashed(directory.path());
  std::ofstream{directory.path() / "state.db"} << "no database";
  fs::remove(directory.path() / "state.db-wal");
  Night next{directory.path()};
  EXPECT_FALSE(next.store().found().readable);
  EXPECT_EQ(to_text(next.room(), next.state()), to_text(next.room(), before));
  next.begin();
  EXPECT_TRUE(next.state().latches[room::RuleId::records_unreadable].set);
}

}  // namespace
}  // namespace tidewright::store
