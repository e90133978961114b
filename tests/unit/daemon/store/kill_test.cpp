// kill -9 at random instants: an announced latch is never lost, and the journal stays in order.
#include <gtest/gtest.h>
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdlib>

#include "core/rehearsal/chance.hpp"
#include "daemon/store/journal_file.hpp"
#include "daemon/store/line.hpp"
#include "daemon/store/store.hpp"
#include "tests/support/rooms.hpp"
#include "tests/support/store_harness.hpp"

namespace tidewright::store {
namespace {

using support::answer_to;
using support::latch;
using support::MemoryDirectory;
using support::minimal_room;
using support::open_store;

const Instant noon{Duration{1'760'000'000'000}};

// The child's whole life: latches one occurrence after the other and announces each on `pipe`
// once the disk has it.
[[noreturn]] void latch_for_ever(const std::filesystem::path& directory, int pipe) {
  const auto store = open_store(directory, minimal_room());
  auto occurrence = store->found().state.alarms[room::RuleId::leak].occurrence;
  while (true) {
    ++occurrence;
    for (int i = 0; i < 5; ++i) {
      store->record(support::wet_floor(noon), "wet", support::latched(noon, occurrence));
    }
    if (!answer_to(*store, latch(*store, noon, occurrence)).ok) _exit(1);
    if (write(pipe, &occurrence, sizeof occurrence) != sizeof occurrence) _exit(2);
  }
}

// Listens to a child's announcements up to an instant, kills it, and returns the last of them.
std::uint32_t announced_until_killed(const std::filesystem::path& directory,
                                     std::chrono::microseconds lived) {
  int ends[2];
  EXPECT_EQ(pipe(ends), 0);
  const pid_t child = fork();
  if (child == 0) latch_for_ever(directory, ends[1]);
  close(ends[1]);
  std::uint32_t announced = 0;
  const auto listen = [&] {
    return read(ends[0], &announced, sizeof announced) == ssize_t{sizeof announced};
  };
  EXPECT_TRUE(listen());
  const auto end = std::chrono::steady_clock::now() + lived;
  pollfd pipe_end{.fd = ends[0], .events = POLLIN, .revents = 0};
  while (std::chrono::steady_clock::now() < end) {
    if (poll(&pipe_end, 1, 0) == 1) listen();
  }
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status)) << "the child ended by itself";
  while (listen()) {
  }
  close(ends[0]);
  return announced;
}

void expect_journal_in_order(const std::filesystem::path& directory) {
  std::uint64_t last = 0;
  JournalFile::for_each_line(directory / "journal.db", [&](const std::string& text) {
    Line line;
    ASSERT_EQ(parse(text, minimal_room(), line), nullptr) << text;
    if (std::holds_alternative<Event>(line.what)) {
      EXPECT_GT(line.sequence, last);
      last = line.sequence;
    }
  });
  EXPECT_GT(last, 0U);
}

TEST(KillTest, AnAnnouncedLatchIsNeverLost) {
  // TIDEWRIGHT_KILLS=500 in the long tier.
  const char* asked = std::getenv("TIDEWRIGHT_KILLS");
  const int kills = asked != nullptr ? std::atoi(asked) : 50;
  const auto seed = static_cast<std::uint64_t>(getpid());
  RecordProperty("seed", std::to_string(seed));
  rehearsal::Chance chance{seed};
  const MemoryDirectory directory;
  for (int i = 0; i < kills; ++i) {
    const std::chrono::microseconds lived{static_cast<int>(chance.uniform() * 30'000)};
    const auto announced = announced_until_killed(directory.path(), lived);
    const auto store = open_store(directory.path(), minimal_room());
    EXPECT_FALSE(store->found().clean);
    EXPECT_TRUE(store->remarks().empty());
    const auto found = store->found().state.alarms[room::RuleId::leak].occurrence;
    EXPECT_TRUE(store->found().state.latches[room::RuleId::leak].set);
    EXPECT_GE(found, announced) << "kill " << i << " after " << lived.count() << " us, seed "
                                << seed;
  }
  expect_journal_in_order(directory.path());
}

}  // namespace
}  // namespace tidewright::store
