// What the store does with files that are cut, damaged or refused: the old version whole, the new
// version whole, or set aside and said. Never a start that calls itself clean without its state.
#include <SQLiteCpp/SQLiteCpp.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <fstream>

#include "daemon/store/state_text.hpp"
#include "daemon/store/store.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/rooms.hpp"
#include "tests/support/small_disk.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::store {
namespace {

namespace fs = std::filesystem;
using support::answer_to;
using support::latch;
using support::MemoryDirectory;
using support::minimal_room;
using support::open_store;
using support::SmallDisk;
using testing::HasSubstr;

const Instant noon{Duration{1'760'000'000'000}};

std::string content(const fs::path& file) {
  std::ifstream in{file, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

void put(const fs::path& file, std::string_view bytes) {
  std::ofstream out{file, std::ios::binary};
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

// What was set aside in a directory.
std::vector<std::string> aside_in(const fs::path& directory) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(directory)) {
    const std::string name = entry.path().filename().string();
    if (name.find(".unreadable-") != name.npos && !name.ends_with("-wal")) names.push_back(name);
  }
  return names;
}

// The long tier tries every byte (tests/long.sh bytes).
std::size_t stride(std::size_t otherwise) {
  return std::getenv("TIDEWRIGHT_EVERY_BYTE") != nullptr ? 1 : otherwise;
}

// The files of a store that latched twice: occurrence 1 is in the database, 2 in its log.
struct Files {
  std::string database, log;
};
Files latched_twice() {
  const MemoryDirectory directory;
  open_store(directory.path(), minimal_room())->close();
  const auto store = open_store(directory.path(), minimal_room());
  answer_to(*store, latch(*store, noon, 1));
  SQLite::Database{(directory.path() / "state.db").string(), SQLite::OPEN_READWRITE}.exec(
      "PRAGMA wal_checkpoint(TRUNCATE)");
  answer_to(*store, latch(*store, noon + Duration{1}, 2));
  return {.database = content(directory.path() / "state.db"),
          .log = content(directory.path() / "state.db-wal")};
}

// What a start makes of such files: the occurrence that it found, or 0 if they were set aside or
// left alone.
std::uint32_t found_in(const Files& files) {
  const MemoryDirectory directory;
  put(directory.path() / "state.db", files.database);
  if (!files.log.empty()) put(directory.path() / "state.db-wal", files.log);
  const auto opened = store::Store::open(directory.path(), minimal_room(), "");
  // The one number of which nobody can tell damage from a later version's.
  if (!opened.refused.empty()) {
    EXPECT_THAT(opened.refused, HasSubstr("was written by a newer tidewright"));
    EXPECT_EQ(content(directory.path() / "state.db"), files.database) << "nothing is lost";
    return 0;
  }
  const auto& store = opened.store;
  EXPECT_FALSE(store->found().clean);
  const auto occurrence = store->found().state.alarms[room::RuleId::leak].occurrence;
  EXPECT_EQ(store->found().state.latches[room::RuleId::leak].set, occurrence > 0);
  EXPECT_EQ(store->found().readable, occurrence > 0);
  if (occurrence == 0) {
    EXPECT_THAT(store->remarks(), testing::Contains(HasSubstr("could not be read")));
    // state.db.unreadable- and the time, as 20261128T074512Z.
    EXPECT_THAT(
        aside_in(directory.path()),
        testing::ElementsAre(testing::MatchesRegex("state\\.db\\.unreadable-[0-9]{8}T[0-9]{6}Z")));
  }
  return occurrence;
}

TEST(BrokenDiskTest, ALogCutAtAnyByteIsTheOldVersionOrTheNew) {
  const Files whole = latched_twice();
  ASSERT_EQ(found_in(whole), 2U);
  bool old = true;
  // Every byte of the first frame and the last, and every 97th between: each start costs 10 ms.
  const std::size_t size = whole.log.size();
  for (std::size_t cut = 0; cut <= size;) {
    const auto occurrence = found_in({whole.database, whole.log.substr(0, cut)});
    EXPECT_TRUE(occurrence == 1 || (occurrence == 2 && cut > size / 2)) << cut << " of " << size;
    EXPECT_TRUE(old || occurrence == 2) << "newer again, then older: " << cut;
    old = occurrence == 1;
    cut += (cut < 64 || cut + 128 >= size) ? 1 : stride(97);
  }
  EXPECT_FALSE(old);
}

TEST(BrokenDiskTest, ADatabaseCutAnywhereIsSetAside) {
  Files whole = latched_twice();
  whole.log.clear();
  ASSERT_EQ(found_in(whole), 1U);
  for (std::size_t cut = 0; cut < whole.database.size(); cut += cut < 128 ? 1 : stride(61)) {
    EXPECT_EQ(found_in({whole.database.substr(0, cut), {}}), 0U) << cut;
  }
}

TEST(BrokenDiskTest, AStateThatIsGoneWhileItsJournalIsThereIsNoFirstStart) {
  const MemoryDirectory directory;
  {
    const auto store = open_store(directory.path(), minimal_room());
    latch(*store, noon, 1);
    ASSERT_TRUE(store->close());
  }
  fs::remove(directory.path() / "state.db");
  const auto store = open_store(directory.path(), minimal_room());
  EXPECT_FALSE(store->found().clean);
  EXPECT_FALSE(store->found().readable);
  EXPECT_EQ(store->found().last, noon);
  EXPECT_THAT(store->remarks(), testing::ElementsAre(HasSubstr("state of the last run is gone")));
}

TEST(BrokenDiskTest, AFlippedBitIsHarmlessOrFound) {
  Files whole = latched_twice();
  whole.log.clear();
  for (std::size_t at = 0; at < whole.database.size(); at += stride(37)) {
    Files flipped = whole;
    flipped.database[at] = static_cast<char>(static_cast<unsigned char>(flipped.database[at]) ^ 4U);
    EXPECT_LE(found_in(flipped), 1U) << at;
  }
}

TEST(BrokenDiskTest, ADamagedJournalCostsNoLatchAndNoCleanStart) {
  const MemoryDirectory directory;
  {
    const auto store = open_store(directory.path(), minimal_room());
    latch(*store, noon, 1);
    ASSERT_TRUE(store->close());
  }
  put(directory.path() / "journal.db", "not a database, but long enough to look at its beginning");
  const auto store = open_store(directory.path(), minimal_room());
  EXPECT_TRUE(store->found().clean);
  EXPECT_TRUE(store->found().state.latches[room::RuleId::leak].set);
  EXPECT_THAT(store->remarks(), testing::ElementsAre(HasSubstr("The journal of the last run could "
                                                               "not be read")));
  EXPECT_THAT(aside_in(directory.path()),
              testing::ElementsAre(testing::StartsWith("journal.db.unreadable-2")));
}

TEST(BrokenDiskTest, AFullDiskIsSaidAndRecoversByItself) {
  const MemoryDirectory directory;
  SmallDisk disk{directory.path(), 512};
  ASSERT_TRUE(disk.mounted()) << "needs root";
  auto store = open_store(disk.path(), minimal_room());
  EXPECT_TRUE(answer_to(*store, latch(*store, noon, 1)).ok);
  put(disk.path() / "filler", std::string(512UL * 1024, 'x'));
  std::uint32_t occurrence = 1;
  const auto next = [&] {
    ++occurrence;
    return answer_to(*store, latch(*store, noon + Duration{occurrence}, occurrence));
  };
  while (occurrence < 200 && next().ok) {
  }
  ASSERT_LT(occurrence, 200U) << "the disk never became full";
  fs::remove(disk.path() / "filler");
  EXPECT_TRUE(support::eventually(std::chrono::seconds{20}, [&] { return store->committed().ok; }));
  EXPECT_TRUE(next().ok);
  EXPECT_TRUE(store->close());
  store.reset();
  store = open_store(disk.path(), minimal_room());
  EXPECT_TRUE(store->found().clean);
  EXPECT_EQ(store->found().state.alarms[room::RuleId::leak].occurrence, occurrence);
}

TEST(BrokenDiskTest, AStartOnAFullDiskKnowsTheLatchAndRecordsAgainOnceThereIsRoom) {
  const MemoryDirectory directory;
  SmallDisk disk{directory.path(), 1024};
  ASSERT_TRUE(disk.mounted()) << "needs root";
  {
    const auto store = open_store(disk.path(), minimal_room());
    answer_to(*store, latch(*store, noon, 1));
  }
  put(disk.path() / "filler", std::string(1024UL * 1024, 'x'));
  {
    const auto store = open_store(disk.path(), minimal_room());
    EXPECT_FALSE(store->committed().ok);
    EXPECT_TRUE(store->found().readable);
    EXPECT_TRUE(store->found().state.latches[room::RuleId::leak].set);
    EXPECT_FALSE(answer_to(*store, latch(*store, noon + Duration{1}, 2)).ok);
    fs::remove(disk.path() / "filler");
    EXPECT_TRUE(
        support::eventually(std::chrono::seconds{20}, [&] { return store->committed().ok; }));
    EXPECT_TRUE(store->close());
  }
  const auto store = open_store(disk.path(), minimal_room());
  EXPECT_TRUE(store->found().clean);
  EXPECT_EQ(store->found().state.alarms[room::RuleId::leak].occurrence, 2U);
}

// The system cuts every write at that length of a file (setrlimit, RLIMIT_FSIZE), and the process
// ends at the first record that the disk refuses.
[[noreturn]] void latch_until_refused(const fs::path& directory, std::size_t longest, int pipe) {
  std::signal(SIGXFSZ, SIG_IGN);
  const rlimit limit{.rlim_cur = longest, .rlim_max = longest};
  setrlimit(RLIMIT_FSIZE, &limit);
  const auto store = open_store(directory, minimal_room());
  for (std::uint32_t occurrence = 2; occurrence < 6; ++occurrence) {
    if (!answer_to(*store, latch(*store, noon + Duration{occurrence}, occurrence)).ok) break;
    if (write(pipe, &occurrence, sizeof occurrence) != sizeof occurrence) break;
  }
  _exit(0);
}

TEST(BrokenDiskTest, ADiskThatTakesOnlySoManyBytesLosesNoAnnouncedLatch) {
  bool refused = false;
  // A state's file and log are some 50 kB after these five.
  for (std::size_t longest = 0; longest < 64UL * 1024; longest += stride(1021)) {
    const MemoryDirectory directory;
    {
      const auto store = open_store(directory.path(), minimal_room());
      answer_to(*store, latch(*store, noon, 1));
    }
    int ends[2];
    ASSERT_EQ(pipe(ends), 0);
    const pid_t child = fork();
    if (child == 0) latch_until_refused(directory.path(), longest, ends[1]);
    close(ends[1]);
    std::uint32_t announced = 1;
    while (read(ends[0], &announced, sizeof announced) == ssize_t{sizeof announced}) {
    }
    close(ends[0]);
    waitpid(child, nullptr, 0);
    refused = refused || announced < 5;
    const auto store = open_store(directory.path(), minimal_room());
    EXPECT_TRUE(store->found().readable) << longest;
    EXPECT_TRUE(store->found().state.latches[room::RuleId::leak].set) << longest;
    EXPECT_GE(store->found().state.alarms[room::RuleId::leak].occurrence, announced) << longest;
  }
  EXPECT_TRUE(refused);
}

TEST(BrokenDiskTest, OfWhatWasSetAsideTheTenNewestAreKept) {
  const MemoryDirectory directory;
  for (int i = 0; i < 13; ++i) {
    put(directory.path() / "state.db", "no database");
    open_store(directory.path(), minimal_room());
    EXPECT_EQ(aside_in(directory.path()).size(), std::min<std::size_t>(10, i + 1U));
  }
}

// A program of before does not know every word of a later one: it must not guess what was latched.
TEST(BrokenDiskTest, AStateWithAWordThatIsNotKnownIsUnreadable) {
  State state;
  EXPECT_FALSE(from_text(minimal_room(), "latches.leak.cause not_yet_invented - 0 0 0\n", state));
  EXPECT_FALSE(from_text(minimal_room(), "make_water.demand whenever\n", state));
  // A field that is not known any more, or not yet, is passed over.
  EXPECT_TRUE(from_text(minimal_room(), "latches.leak.set 1\nlatches.leak.mood grim\n", state));
  EXPECT_TRUE(state.latches[room::RuleId::leak].set);
}

TEST(BrokenDiskTest, AReadOnlyDiskIsSaidAndStopsNothing) {
  const MemoryDirectory directory;
  SmallDisk disk{directory.path(), 2048};
  ASSERT_TRUE(disk.mounted()) << "needs root";
  {
    const auto store = open_store(disk.path(), minimal_room());
    latch(*store, noon, 1);
    ASSERT_TRUE(store->close());
  }
  ASSERT_TRUE(disk.remount(MS_RDONLY));
  const auto store = open_store(disk.path(), minimal_room());
  EXPECT_FALSE(store->committed().ok);
  EXPECT_TRUE(store->found().readable);
  EXPECT_TRUE(store->found().state.latches[room::RuleId::leak].set);
  EXPECT_THAT(store->remarks(), testing::Contains(HasSubstr("The state cannot be stored")));
  EXPECT_FALSE(answer_to(*store, latch(*store, noon + Duration{5}, 2)).ok);
  EXPECT_FALSE(store->close());
}

TEST(BrokenDiskTest, ADirectoryThatCannotBeMadeIsSaidAndStopsNothing) {
  const MemoryDirectory directory;
  put(directory.path() / "in the way", "a file");
  const auto store = open_store(directory.path() / "in the way" / "state", minimal_room());
  EXPECT_FALSE(store->committed().ok);
  EXPECT_FALSE(store->found().readable) << "whether there was a run before cannot be told";
  EXPECT_FALSE(store->found().state.latches[room::RuleId::leak].set);
  EXPECT_FALSE(answer_to(*store, latch(*store, noon, 1)).ok);
  EXPECT_FALSE(store->close());
}

}  // namespace
}  // namespace tidewright::store
