#include "daemon/store/writer.hpp"

#include <poll.h>
#include <sys/eventfd.h>
#include <sys/timerfd.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <exception>

#include "daemon/store/catch_up.hpp"
#include "daemon/store/line.hpp"
#include "daemon/store/state_text.hpp"

namespace tidewright::store {
namespace {

// After a reaction the disk is left alone for so long.
constexpr long written_after_ns = 20'000'000;
constexpr int tried_again_after_ms = 1000;
// The ledger of a daemon that is killed is no older than this.
constexpr Duration saved_every = std::chrono::seconds{60};
// An incident begins with a chapter, and a start after a crash lives the last one through again.
constexpr Duration chapter_every = std::chrono::hours{1};
constexpr std::int64_t chapters_in_a_ring = 16;  // at least, where they are ended by their size
constexpr std::size_t entries_at_once = 512;

int new_event() { return eventfd(0, EFD_NONBLOCK | EFD_CLOEXEC); }

void signal(const Descriptor& event) {
  const std::uint64_t one = 1;
  [[maybe_unused]] const auto written = write(event.number(), &one, sizeof one);
}

// True if it was signalled, or the timer ran out; it is not any more.
bool heard(const Descriptor& descriptor) {
  std::uint64_t count = 0;
  return read(descriptor.number(), &count, sizeof count) == sizeof count;
}

}  // namespace

Writer::Writer(const std::filesystem::path& directory, std::unique_ptr<Descriptor> lock,
               const room::Room& room, std::string_view household, const Ring& ring)
    : lock_(std::move(lock)),
      room_(room),
      household_(household),
      state_file_(directory / "state.db", room_, present_),
      journal_file_(directory / "journal.db", ring),
      chapter_bytes_most_(ring.bytes_most / chapters_in_a_ring),
      timer_(timerfd_create(CLOCK_MONOTONIC, TFD_NONBLOCK | TFD_CLOEXEC)),
      urgent_(new_event()),
      changed_(new_event()),
      ended_(new_event()),
      incidents_(directory / "incidents") {
  catch_up(journal_file_, state_file_, room_, present_);
  incidents_.begin(present_.state);
  sequence_ = std::max(present_.sequence, journal_file_.last_sequence());
  in_journal_ = sequence_;
  if (state_file_.marked()) saved_ = present_.at;
  present_.sequence = sequence_;
  present_.at = std::max(present_.at, journal_file_.last());
  journal_ok_ = journal_file_.opened().database != nullptr;
  answer(0, state_file_.marked() && journal_ok_);
}

std::uint64_t Writer::record(const Event& event, std::string_view raw, const State& state) {
  ++sequence_;
  if (Entry* entry = queue_.place()) {
    entry->sequence = sequence_;
    entry->event = event;
    entry->raw_size = static_cast<std::uint16_t>(raw.copy(entry->raw.data(), raw_longest));
    queue_.hand_over();
  } else {
    lost_ = true;
  }
  latest_.draft().sequence = sequence_;
  latest_.draft().state = state;
  latest_.hand_over();
  if (!woken_.exchange(true)) {
    const itimerspec soon{.it_interval = {},
                          .it_value = {.tv_sec = 0, .tv_nsec = written_after_ns}};
    timerfd_settime(timer_.number(), 0, &soon, nullptr);
  }
  return sequence_;
}

void Writer::persist() {
  asked_ = sequence_;
  signal(urgent_);
}

Committed Writer::committed() {
  heard(changed_);
  const std::uint64_t answered = answered_.load();
  return {.sequence = answered / 2, .ok = answered % 2 == 1};
}

void Writer::finish(bool clean) {
  finish_clean_ = clean;
  finish_ = true;
  signal(urgent_);
}

void Writer::run() {
  sigset_t all;
  sigfillset(&all);
  pthread_sigmask(SIG_BLOCK, &all, nullptr);
  journal_ok_ = write_journal();  // the run's first chapter, from the state as found
  bool last = false;
  while (!last) {
    wait();
    last = finish_.load();
    write_all(last);
  }
  signal(ended_);
}

void Writer::wait() {
  std::array<pollfd, 2> both{pollfd{urgent_.number(), POLLIN, 0},
                             pollfd{timer_.number(), POLLIN, 0}};
  // While the disk refuses, events alone are no reason to try again.
  const nfds_t heeded = failing_ ? 1 : 2;
  poll(both.data(), heeded, failing_ || !answered_ok() ? tried_again_after_ms : -1);
  heard(urgent_);
  if (heard(timer_)) woken_ = false;
}

void Writer::write_all(bool last) {
  const std::uint64_t asked = asked_.load();
  if (latest_.take()) {
    const Snapshot& newest = latest_.current();
    present_ = {.sequence = newest.sequence,
                .at = newest.state.circumstances.now,
                .clean = false,
                .state = newest.state};
    incidents_.notice(present_.state);
  }
  present_.clean = last && finish_clean_;
  const bool nothing_lost = !lost_.exchange(false);
  const bool due = asked > persisted_ || present_.clean || present_.at - saved_ >= saved_every;
  const bool state_ok = !due || write_state();
  persisted_ = asked;
  ended_clean_ = present_.clean && state_ok;
  // Announcements wait for this answer, and need not wait for the journal.
  answer(asked, state_ok && journal_ok_ && nothing_lost);
  journal_ok_ = write_journal();
  answer(asked, state_ok && journal_ok_ && nothing_lost);
  failing_ = !state_ok || !journal_ok_ || journal_busy_;
  write_incident(last);
}

// Only where the state is the one after the journal's last line can the stretch be closed by it.
void Writer::write_incident(bool ending) {
  if (failing_ || in_journal_ != present_.sequence || !incidents_.due(present_.at, ending)) return;
  incidents_.write(journal_file_, chapter(false), present_.at, ending);
}

bool Writer::write_state() {
  try {
    state_file_.write(room_, present_);
    saved_ = present_.at;
    recorded_ = std::max(recorded_.load(), present_.sequence);
    return true;
  } catch (const std::exception&) {
    saved_ = long_ago;  // so that it is due again at once
    return false;
  }
}

bool Writer::write_journal() {
  do {
    const Batch batch = next_batch();
    try {
      journal_busy_ = !journal_file_.append(batch.lines);
    } catch (const std::exception&) {
      return false;
    }
    if (journal_busy_) return true;  // another program copies it: nothing is lost yet
    queue_.done(batch.entries);
    in_journal_ = batch.sequence;
    recorded_ = std::max(recorded_.load(), in_journal_);
    chapter_bytes_ = batch.bytes;
    chapter_due_ = batch.chapter_due;
    chapter_ = batch.chapter;
    run_begins_ = run_begins_ && !batch.opens;
  } while (queue_.size() >= entries_at_once);
  return true;
}

Writer::Batch Writer::next_batch() const {
  Batch batch{.lines = {},
              .entries = std::min(queue_.size(), entries_at_once),
              .sequence = in_journal_,
              .opens = false,
              .bytes = chapter_bytes_,
              .chapter_due = chapter_due_ || present_.at - chapter_ >= chapter_every ||
                             chapter_bytes_ > chapter_bytes_most_,
              .chapter = chapter_};
  for (std::size_t i = 0; i < batch.entries; ++i) {
    const Entry& entry = queue_[i];
    if (batch.chapter_due && batch.sequence == present_.sequence) open_chapter(batch);
    // After a gap only the next chapter's state makes sense of what follows.
    if (entry.sequence != batch.sequence + 1) batch.chapter_due = true;
    batch.lines.push_back(
        {.at = entry.event.at,
         .opens = false,
         .text = print(room_, entry.sequence, entry.event, {entry.raw.data(), entry.raw_size})});
    batch.bytes += static_cast<std::int64_t>(batch.lines.back().text.size());
    batch.sequence = entry.sequence;
  }
  if (batch.chapter_due && batch.sequence == present_.sequence) open_chapter(batch);
  return batch;
}

// Its two opening lines.
std::vector<Written> Writer::chapter(bool fresh) const {
  const Instant at = present_.at;
  const HouseholdText household{household_};
  const StateText state{.text = to_text(room_, present_.state), .fresh = fresh};
  return {{.at = at, .opens = true, .text = print(present_.sequence, at, household)},
          {.at = at, .opens = false, .text = print(present_.sequence, at, state)}};
}

void Writer::open_chapter(Batch& batch) const {
  for (Written& line : chapter(run_begins_)) batch.lines.push_back(std::move(line));
  batch.opens = true;
  batch.bytes = 0;
  batch.chapter_due = false;
  batch.chapter = present_.at;
}

bool Writer::answered_ok() const { return answered_.load() % 2 == 1; }

void Writer::answer(std::uint64_t sequence, bool ok) {
  const std::uint64_t answered = sequence * 2 + (ok ? 1 : 0);
  if (answered_.exchange(answered) != answered) signal(changed_);
}

}  // namespace tidewright::store
