// A night that the store recorded, told again in plain words.
#include "daemon/commands/replay.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sysexits.h>

#include <cstdio>
#include <fstream>
#include <iterator>
#include <sstream>

#include "config/reader/reader.hpp"
#include "core/step.hpp"
#include "daemon/store/journal_file.hpp"
#include "daemon/store/line.hpp"
#include "daemon/store/store.hpp"
#include "tests/support/eventually.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::commands {
namespace {

namespace fs = std::filesystem;
using support::MemoryDirectory;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

const fs::path minimal = fs::path{TIDEWRIGHT_SOURCE_DIR} / "config" / "minimal.toml";

std::string content(const fs::path& file) {
  std::ifstream in{file};
  return {std::istreambuf_iterator<char>{in}, {}};
}

// A daemon without its lines: steps, records, persists.
class Night {
 public:
  explicit Night(const fs::path& directory)
      : room_(config::read(content(minimal)).household.value().room),
        store_(store::Store::open(directory, room_, content(minimal)).store),
        state_(store_->found().state),
        journal_(directory / "journal.db") {}

  void happen(const decltype(Event::what)& what, std::string_view raw = {}) {
    now_ += std::chrono::seconds{1};
    const Event event{.at = now_, .what = what};
    step(room_, state_, event, effects_);
    sequence_ = store_->record(event, raw, state_);
    for (const Effect& effect : effects_) {
      if (!std::holds_alternative<Persist>(effect)) continue;
      store_->persist();
      support::answer_to(*store_, sequence_);
    }
  }
  void sleep(Duration lasting) { now_ += lasting; }
  // Until the journal has a chapter that opens after the last event.
  void wait_for_chapter() const {
    EXPECT_TRUE(support::eventually(std::chrono::seconds{10}, [&] {
      bool found = false;
      store::JournalFile::for_each_line(journal_, [&](const std::string& text) {
        store::Line line;
        found = store::parse(text, room_, line) == nullptr && line.sequence == sequence_ &&
                std::holds_alternative<store::StateText>(line.what);
      });
      return found;
    }));
  }
  void end() { EXPECT_TRUE(store_->close()); }

  room::InstrumentIndex instrument(room::Quantity quantity, room::Place place) const {
    return room::find(room_, quantity, place).value();
  }

 private:
  room::Room room_;
  std::unique_ptr<store::Store> store_;
  State state_;
  Effects effects_;
  fs::path journal_;
  std::uint64_t sequence_ = 0;
  Instant now_{Duration{1'760'000'000'000}};
};

// Two days, so that chapters open besides the run's; the floor is wet on the second.
void live_through_a_leak(const fs::path& directory) {
  Night night{directory};
  night.happen(Started{.clean = true, .away = Duration{0}});
  night.happen(ClockSet{{.ahead = Duration{0}, .zone = std::chrono::minutes{60}}});
  night.happen(Link{.up = true});
  const auto floor = night.instrument(room::Quantity::wetness, room::Place::floor);
  night.happen(Reading{.instrument = floor, .value = 0}, "dry");
  night.sleep(std::chrono::hours{25});
  night.happen(Reading{.instrument = floor, .value = 0}, "dry");
  night.wait_for_chapter();
  night.happen(Reading{.instrument = floor, .value = 1}, "wet");
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
