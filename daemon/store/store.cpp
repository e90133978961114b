#include "daemon/store/store.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <sys/file.h>

#include <algorithm>
#include <cerrno>
#include <utility>

#include "daemon/store/writer.hpp"

namespace tidewright::store {
namespace {

namespace fs = std::filesystem;

constexpr int end_waited_for_ms = 1000;

// Held by one daemon at a time; the system lets go of it however the daemon ends.
struct Lock {
  std::unique_ptr<Descriptor> held;
  bool taken_by_another = false;
};

Lock lock(const fs::path& directory) {
  std::error_code ignored;  // what cannot be made shows when the files are opened
  fs::create_directories(directory, ignored);
  auto file = std::make_unique<Descriptor>(
      ::open((directory / "lock").c_str(), O_CREAT | O_RDWR | O_CLOEXEC, 0644));
  const bool refused = file->number() >= 0 && flock(file->number(), LOCK_EX | LOCK_NB) != 0;
  return {.held = std::move(file), .taken_by_another = refused && errno == EWOULDBLOCK};
}

std::string newer(const fs::path& file, const std::string& how) {
  return fmt::format(
      "{} was written by a newer tidewright: {}. Install the newer one again, or move the file "
      "away to start without it: latched alarms, totals and the journal are then forgotten.",
      file.string(), how);
}

void remark(std::vector<std::string>& remarks, const OpenDatabase& opened, const char* what,
            const char* consequence) {
  if (!opened.set_aside.empty()) {
    remarks.push_back(fmt::format("{} of the last run could not be read ({}). It is kept as {}. {}",
                                  what, opened.unreadable, opened.set_aside, consequence));
  }
  if (!opened.refused.empty()) {
    remarks.push_back(fmt::format("{} cannot be stored: {}. Commands do not depend on it.", what,
                                  opened.refused));
  }
}

constexpr const char* assumed =
    "Whether an alarm was latched is not known, so a trip is assumed: look at the room, then reset "
    "records_unreadable.";

// Nothing of a run before, neither state nor journal, and the disk takes what is new.
bool is_first_start(const Writer& writer) {
  const OpenDatabase& state = writer.state_file().opened();
  return !state.existed && state.database && writer.kept().at == long_ago;
}

bool is_readable(const Writer& writer) {
  return writer.state_file().was_read() || is_first_start(writer);
}

std::vector<std::string> remarks_of(const Writer& writer) {
  std::vector<std::string> remarks;
  const OpenDatabase& state = writer.state_file().opened();
  remark(remarks, state, "The state", assumed);
  if (state.set_aside.empty() && !is_readable(writer)) {
    remarks.push_back(fmt::format("The state of the last run is gone. {}", assumed));
  }
  remark(remarks, writer.journal_file().opened(), "The journal", "A new one was begun.");
  return remarks;
}

Found found_by(const Writer& writer) {
  const Kept& kept = writer.kept();
  return {.state = kept.state,
          .clean = kept.clean || is_first_start(writer),
          .readable = is_readable(writer),
          .last = kept.at};
}

}  // namespace

Opened Store::open(const fs::path& directory, const room::Room& room, std::string_view household,
                   const Ring& ring) {
  Lock lock = store::lock(directory);
  if (lock.taken_by_another) {
    return {.store = nullptr,
            .refused = fmt::format("Another tidewright keeps its state in {}: one of the two must "
                                   "have a directory of its own (--state).",
                                   directory.string())};
  }
  auto writer = std::make_shared<Writer>(directory, std::move(lock.held), room, household, ring);
  const OpenDatabase& state = writer->state_file().opened();
  if (state.newer)
    return {.store = nullptr, .refused = newer(directory / "state.db", state.refused)};
  const OpenDatabase& journal = writer->journal_file().opened();
  if (journal.newer) {
    return {.store = nullptr, .refused = newer(directory / "journal.db", journal.refused)};
  }
  Found found = found_by(*writer);
  auto remarks = remarks_of(*writer);
  return {.store = std::unique_ptr<Store>{new Store{std::move(writer), found, std::move(remarks)}},
          .refused = {}};
}

Store::Store(std::shared_ptr<Writer> writer, Found found, std::vector<std::string> remarks)
    : writer_(std::move(writer)),
      found_(found),
      remarks_(std::move(remarks)),
      thread_([owner = writer_] { owner->run(); }) {}

Store::~Store() {
  writer_->finish(false);
  if (thread_.joinable()) thread_.join();
}

std::uint64_t Store::record(const Event& event, std::string_view raw, const State& state) {
  return writer_->record(event, raw, state);
}

void Store::persist() { writer_->persist(); }
int Store::descriptor() const { return writer_->changed(); }
Committed Store::committed() { return writer_->committed(); }
std::uint64_t Store::recorded() const { return writer_->recorded(); }

bool Store::close() {
  if (!thread_.joinable()) return false;
  writer_->finish(true);
  pollfd ended{.fd = writer_->ended(), .events = POLLIN, .revents = 0};
  if (poll(&ended, 1, end_waited_for_ms) != 1) {
    thread_.detach();  // the disk does not answer; the thread owns what it works with
    return false;
  }
  thread_.join();
  return writer_->ended_clean();
}

}  // namespace tidewright::store
