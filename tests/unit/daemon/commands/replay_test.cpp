// A night that the store recorded, told again in plain words.
#include "daemon/commands/replay.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sysexits.h>

#include <cstdio>
#include <fstream>
#include <sstream>

#include "tests/support/night.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::commands {
namespace {

namespace fs = std::filesystem;
using support::MemoryDirectory;
using support::Night;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

const fs::path minimal = fs::path{TIDEWRIGHT_SOURCE_DIR} / "config" / "minimal.toml";

// Two days, so that chapters open besides the run's; the floor is wet on the second.
void live_through_a_leak(const fs::path& directory) {
  Night night{directory};
  night.begin();
  night.sleep(std::chrono::hours{25});
  night.floor_says(false);
  night.wait_for_chapter();
  night.floor_says(true);
  night.happen(Ask{.kind = AskKind::acknowledge,
                   .ticket = 1,
                   .alarm = room::RuleId::leak,
                   .occurrence = 0,
                   .lasting = Duration{0},
                   .token = 0,
                   .who = Name{"ann"}});
  night.happen(Stopping{});
  night.end();
}

struct Told {
  int code = 0;
  std::string out, err;
};
Told tell(const Replay& asked) {
  std::ostringstream out, err;
  const int code = replay(asked, out, err);
  return {.code = code, .out = out.str(), .err = err.str()};
}

TEST(ReplayTest, TellsTheNightInPlainWords) {
  const MemoryDirectory directory;
  live_through_a_leak(directory.path());
  const Told told = tell({.journal = directory.path() / "journal.db", .config = {}});
  EXPECT_EQ(told.code, EX_OK);
  EXPECT_EQ(told.err, "");
  EXPECT_THAT(told.out, AllOf(HasSubstr(" says wet  [wet]\n"), HasSubstr("    OFF to "),
                              HasSubstr("    raised: "), HasSubstr("ann asks: acknowledge leak"),
                              HasSubstr("    answer: ")));
  // 1,760,000,000 s after 1970 is 9 October 2025, 08:53:20 UTC (`date -u -d @1760000000`).
  EXPECT_THAT(told.out, HasSubstr("2025-10-10T"));
  EXPECT_THAT(told.out, HasSubstr("8 events lived through again"));
  EXPECT_THAT(told.out, Not(HasSubstr("passed over")));
  const std::size_t chapters = told.out.find(" chapters ended exactly");
  ASSERT_NE(chapters, std::string::npos);
  int exact = 0;
  int all = 0;
  const std::size_t numbers = told.out.rfind("; ", chapters) + 2;
  ASSERT_EQ(std::sscanf(told.out.c_str() + numbers, "%d of %d", &exact, &all), 2);
  EXPECT_GT(all, 0);
  EXPECT_EQ(exact, all);
}

TEST(ReplayTest, AnExportTellsTheSame) {
  const MemoryDirectory directory;
  live_through_a_leak(directory.path());
  const fs::path journal = directory.path() / "journal.db";
  const Told exported =
      tell({.journal = journal, .config = {}, .every_command = false, .export_text = true});
  const fs::path text = directory.path() / "night.txt";
  std::ofstream{text} << exported.out;
  EXPECT_EQ(tell({.journal = text, .config = {}}).out,
            tell({.journal = journal, .config = {}}).out);
  EXPECT_EQ(tell({.journal = text, .config = minimal}).out,
            tell({.journal = text, .config = {}}).out);
}

TEST(ReplayTest, SaysWhatIsMissingAndGoesOnWithTheNextChapter) {
  const MemoryDirectory directory;
  live_through_a_leak(directory.path());
  const Told exported = tell({.journal = directory.path() / "journal.db",
                              .config = {},
                              .every_command = false,
                              .export_text = true});
  const fs::path text = directory.path() / "night.txt";
  std::istringstream lines{exported.out};
  std::ofstream cut{text};
  for (std::string line; std::getline(lines, line);) {
    if (line.find(" link up=1") == std::string::npos) cut << line << '\n';
  }
  cut.close();
  const Told told = tell({.journal = text, .config = {}});
  EXPECT_EQ(told.code, EX_OK);
  EXPECT_THAT(told.err, HasSubstr("1 events are missing before event 4"));
  EXPECT_THAT(told.out, HasSubstr("lines passed over"));
  EXPECT_THAT(told.out, HasSubstr(" says wet  [wet]\n"));
}

TEST(ReplayTest, RefusesWhatIsNoJournal) {
  const MemoryDirectory directory;
  EXPECT_EQ(tell({.journal = directory.path() / "none", .config = {}}).code, EX_NOINPUT);
  const fs::path text = directory.path() / "letter.txt";
  std::ofstream{text} << "Dear Ann,\nthe floor is wet.\n";
  const Told told = tell({.journal = text, .config = {}});
  EXPECT_EQ(told.code, EX_DATAERR);
  EXPECT_THAT(told.err, HasSubstr("no line of a journal"));
  const fs::path config = directory.path() / "room.toml";
  std::ofstream{config} << "room = 3\n";
  EXPECT_EQ(tell({.journal = text, .config = config}).code, EX_CONFIG);
}

}  // namespace
}  // namespace tidewright::commands
