// The stretch of the journal around an alarm outlives the ring and can be lived through again.
#include "daemon/store/incidents.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

#include "daemon/store/line.hpp"
#include "daemon/store/relive.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/night.hpp"
#include "tests/support/process.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::store {
namespace {

namespace fs = std::filesystem;
using support::MemoryDirectory;
using support::Night;
using namespace std::chrono_literals;

std::vector<fs::path> incidents_in(const fs::path& directory) {
  std::vector<fs::path> files;
  std::error_code none;
  for (const auto& entry : fs::directory_iterator(directory / "incidents", none)) {
    files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

struct Relived {
  store::Relived result;
  std::vector<std::string> complaints;
  bool leaked = false;
};
Relived relived(const fs::path& incident) {
  Relived lived;
  Relive relive{{},
                [&](const Moment& moment) {
                  const auto& leak = moment.state.latches[room::RuleId::leak];
                  lived.leaked = lived.leaked || leak.set;
                },
                [&](const std::string& trouble) { lived.complaints.push_back(trouble); }};
  std::ifstream in{incident};
  for (std::string line; std::getline(in, line);) relive.line(line);
  lived.result = relive.result();
  return lived;
}

bool is_kept(const fs::path& directory) {
  return support::eventually(10s, [&] { return incidents_in(directory).size() == 1; });
}

// At 08:53:25 UTC: the fifth second of a night (`date -u -d @1760000005`).
void leak(Night& night) {
  night.begin();
  night.floor_says(true);
}

TEST(IncidentsTest, ALeakIsKeptAndReplaysEqual) {
  const MemoryDirectory directory;
  {
    Night night{directory.path()};
    leak(night);
    ASSERT_TRUE(is_kept(directory.path()));
    night.end();
  }
  const auto files = incidents_in(directory.path());
  ASSERT_EQ(files.size(), 1U);
  EXPECT_EQ(files[0].filename(), "20251009T085325Z-leak.txt");
  const Relived lived = relived(files[0]);
  EXPECT_TRUE(lived.leaked);
  EXPECT_THAT(lived.complaints, testing::IsEmpty());
  EXPECT_EQ(lived.result.events, 5U);
  EXPECT_GE(lived.result.chapters, 1U);
  EXPECT_EQ(lived.result.chapters_agreed, lived.result.chapters);
}

TEST(IncidentsTest, WhatFollowsWithinHalfAnHourIsInIt) {
  const MemoryDirectory directory;
  Night night{directory.path()};
  leak(night);
  ASSERT_TRUE(is_kept(directory.path()));
  const auto at_first = relived(incidents_in(directory.path())[0]).result.events;
  night.sleep(20min);
  night.floor_says(false);
  night.sleep(15min);
  night.floor_says(false);
  EXPECT_TRUE(support::eventually(10s, [&] {
    return relived(incidents_in(directory.path())[0]).result.events == at_first + 2;
  }));
  night.end();
}

TEST(IncidentsTest, IsKeptWhereTheDaemonIsKilledInTheMidst) {
  const MemoryDirectory directory;
  {
    Night night{directory.path()};
    leak(night);
    ASSERT_TRUE(is_kept(directory.path()));
  }
  Night next{directory.path()};
  next.begin();
  next.end();
  const auto files = incidents_in(directory.path());
  ASSERT_EQ(files.size(), 2U);  // the unclean start is one, too, and holds the end before it
  for (const fs::path& file : files) {
    const Relived lived = relived(file);
    EXPECT_TRUE(lived.leaked) << file;
    EXPECT_THAT(lived.complaints, testing::IsEmpty());
    EXPECT_EQ(lived.result.chapters_agreed, lived.result.chapters);
  }
}

TEST(IncidentsTest, OutlivesTheRing) {
  const MemoryDirectory directory;
  Night night{directory.path()};
  leak(night);
  ASSERT_TRUE(is_kept(directory.path()));
  for (int day = 0; day < 20; ++day) {
    night.sleep(24h);
    night.floor_says(true);
    night.wait_for_journal();
  }
  night.end();
  Instant oldest = never;
  JournalFile::for_each_line(directory.path() / "journal.db", [&](const std::string& text) {
    Line line;
    parse(text, night.room(), line);
    oldest = std::min(oldest, line.at);
  });
  EXPECT_GT(oldest, night.now() - 16 * 24h);
  EXPECT_TRUE(relived(incidents_in(directory.path())[0]).leaked);
}

TEST(IncidentsTest, TheNewestAreKeptAndTheirSizeIsBounded) {
  const MemoryDirectory directory;
  const JournalFile journal{directory.path() / "journal.db", {}};
  Incidents incidents{directory.path() / "incidents", {.files_most = 3, .bytes_most = 2000}};
  State state;
  incidents.begin(state);
  const std::vector<Written> chapter{
      {.at = long_ago, .opens = true, .text = std::string(600, 'x')}};
  const auto live = [&](int minute) {
    auto& alarm = state.alarms[room::RuleId::vat_low];
    ++alarm.occurrence;
    alarm.since = Instant{std::chrono::minutes{minute}};
    incidents.notice(state);
    EXPECT_TRUE(incidents.due(alarm.since, true));
    incidents.write(journal, chapter, alarm.since, true);
    EXPECT_FALSE(incidents.due(alarm.since, true));
  };
  for (int minute = 0; minute < 8; ++minute) live(minute);
  // 601 bytes each: three are under both bounds.
  EXPECT_THAT(incidents_in(directory.path()),
              testing::ElementsAre(directory.path() / "incidents/19700101T000500Z-vat_low.txt",
                                   directory.path() / "incidents/19700101T000600Z-vat_low.txt",
                                   directory.path() / "incidents/19700101T000700Z-vat_low.txt"));
  const std::vector<Written> huge{{.at = long_ago, .opens = true, .text = std::string(3000, 'x')}};
  ++state.alarms[room::RuleId::leak].occurrence;
  state.alarms[room::RuleId::leak].since = Instant{9min};
  incidents.notice(state);
  incidents.write(journal, huge, Instant{9min}, true);
  EXPECT_THAT(incidents_in(directory.path()),
              testing::ElementsAre(directory.path() / "incidents/19700101T000900Z-leak.txt"));
}

}  // namespace
}  // namespace tidewright::store
