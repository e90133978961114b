// What the store does with files that are cut, damaged or refused: the old version whole, the new
// version whole, or set aside and said. Never a start that calls itself clean without its state.
#include <SQLiteCpp/SQLiteCpp.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/mount.h>
#include <sys/resource.h>

#include <csignal>
#include <fstream>

#include "daemon/store/store.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/rooms.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::store {
namespace {

namespace fs = std::filesystem;
using support::answer_to;
using support::latch;
using support::MemoryDirectory;
using support::minimal_room;
using support::open_store;
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

// What a start makes of such files: the occurrence that it found, or 0 if they were set aside.
std::uint32_t found_in(const Files& files) {
  const MemoryDirectory directory;
  put(directory.path() / "state.db", files.database);
  if (!files.log.empty()) put(directory.path() / "state.db-wal", files.log);
  const auto store = open_store(directory.path(), minimal_room());
  EXPECT_FALSE(store->found().clean);
  const auto occurrence = store->found().state.alarms[room::RuleId::leak].occurrence;
  EXPECT_EQ(store->found().state.latches[room::RuleId::leak].set, occurrence > 0);
  if (occurrence == 0) {
    EXPECT_THAT(store->remarks(), testing::Contains(HasSubstr("could not be read")));
    EXPECT_TRUE(fs::exists(directory.path() / "state.db.unreadable-1"));
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
    cut += (cut < 64 || cut + 128 >= size) ? 1 : 97;
  }
  EXPECT_FALSE(old);
}

TEST(BrokenDiskTest, ADatabaseCutAnywhereIsSetAside) {
  Files whole = latched_twice();
  whole.log.clear();
  ASSERT_EQ(found_in(whole), 1U);
  for (std::size_t cut = 0; cut < whole.database.size(); cut += cut < 128 ? 1 : 61) {
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
  EXPECT_EQ(store->found().last, noon);
  EXPECT_THAT(store->remarks(), testing::ElementsAre(HasSubstr("the state of the last run is "
                                                               "gone")));
}

TEST(BrokenDiskTest, AFlippedBitIsHarmlessOrFound) {
  Files whole = latched_twice();
  whole.log.clear();
  for (std::size_t at = 0; at < whole.database.size(); at += 37) {
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
  EXPECT_TRUE(fs::exists(directory.path() / "journal.db.unreadable-1"));
}

// A file system of its own, `kilobytes` large.
class SmallDisk {
 public:
  explicit SmallDisk(int kilobytes) {
    const std::string size = "size=" + std::to_string(kilobytes) + "k";
    mounted_ = mount("tmpfs", directory_.path().c_str(), "tmpfs", 0, size.c_str()) == 0;
  }
  ~SmallDisk() { umount2(directory_.path().c_str(), MNT_DETACH); }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;
  bool mounted() const { return mounted_; }
  const fs::path& path() const { return directory_.path(); }
  bool remount(unsigned long flags) {
    return mount("tmpfs", path().c_str(), "tmpfs", MS_REMOUNT | flags, nullptr) == 0;
  }

 private:
  MemoryDirectory directory_;
  bool mounted_ = false;
};

TEST(BrokenDiskTest, AFullDiskIsSaidAndRecoversByItself) {
  SmallDisk disk{512};
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

TEST(BrokenDiskTest, AReadOnlyDiskIsSaidAndStopsNothing) {
  SmallDisk disk{2048};
  ASSERT_TRUE(disk.mounted()) << "needs root";
  {
    const auto store = open_store(disk.path(), minimal_room());
    latch(*store, noon, 1);
    ASSERT_TRUE(store->close());
  }
  ASSERT_TRUE(disk.remount(MS_RDONLY));
  const auto store = open_store(disk.path(), minimal_room());
  EXPECT_FALSE(store->committed().ok);
  EXPECT_THAT(store->remarks(), testing::Contains(HasSubstr("The state cannot be stored")));
  EXPECT_FALSE(answer_to(*store, latch(*store, noon + Duration{5}, 2)).ok);
  EXPECT_FALSE(store->close());
}

TEST(BrokenDiskTest, ADirectoryThatCannotBeMadeIsSaidAndStopsNothing) {
  const MemoryDirectory directory;
  put(directory.path() / "in the way", "a file");
  const auto store = open_store(directory.path() / "in the way" / "state", minimal_room());
  EXPECT_FALSE(store->committed().ok);
  EXPECT_FALSE(store->found().state.latches[room::RuleId::leak].set);
  EXPECT_FALSE(answer_to(*store, latch(*store, noon, 1)).ok);
  EXPECT_FALSE(store->close());
}

}  // namespace
}  // namespace tidewright::store
