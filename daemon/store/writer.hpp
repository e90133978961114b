// The thread that owns the disk. The decision thread gives (record, persist), the writer takes.
#pragma once

#include <array>
#include <atomic>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/event.hpp"
#include "core/room/room.hpp"
#include "core/state/state.hpp"
#include "daemon/base/descriptor.hpp"
#include "daemon/store/incidents.hpp"
#include "daemon/store/journal_file.hpp"
#include "daemon/store/queue.hpp"
#include "daemon/store/state_file.hpp"
#include "daemon/store/store.hpp"

namespace tidewright::store {

// The queue stands in memory whole: 0.4 MB.
inline constexpr std::size_t entries_most = 1024;
inline constexpr std::size_t raw_longest = 255;

class Writer {
 public:
  // Opens both files; kept() is what they hold. No thread yet. `lock` is held as long as this.
  Writer(const std::filesystem::path& directory, std::unique_ptr<Descriptor> lock,
         const room::Room& room, std::string_view household, const Ring& ring);

  const Kept& kept() const { return present_; }
  const StateFile& state_file() const { return state_file_; }
  const JournalFile& journal_file() const { return journal_file_; }

  // The writer thread's whole life: returns after finish(). What the disk refuses is kept and
  // tried again every second.
  void run();

  // The decision thread's; none of them waits. See Store.
  std::uint64_t record(const Event& event, std::string_view raw, const State& state);
  void persist();
  int changed() const { return changed_.number(); }
  Committed committed();
  std::uint64_t recorded() const { return recorded_.load(); }
  // Asks for the end: what is left is written, once. `clean`: on purpose.
  void finish(bool clean);
  // Readable once run() is about to return. Then ended_clean() says whether the disk took the mark.
  int ended() const { return ended_.number(); }
  bool ended_clean() const { return ended_clean_.load(); }

 private:
  struct Entry {
    std::uint64_t sequence = 0;
    Event event;
    std::uint16_t raw_size = 0;
    std::array<char, raw_longest> raw{};
  };
  struct Snapshot {
    std::uint64_t sequence = 0;
    State state;
  };
  // What goes into the journal in one transaction, and what is true once it is there.
  struct Batch {
    std::vector<Written> lines;
    std::size_t entries = 0;
    std::uint64_t sequence = 0;
    bool opens = false;      // a chapter is among them
    std::int64_t bytes = 0;  // of the lines since it
    bool chapter_due = false;
    Instant chapter = long_ago;
  };

  void wait();
  void write_all(bool last);
  // Each false if the disk refused.
  bool write_state();
  bool write_journal();
  Batch next_batch() const;
  std::vector<Written> chapter(bool fresh) const;
  void open_chapter(Batch& batch) const;
  void write_incident(bool ending);
  void answer(std::uint64_t sequence, bool ok);
  bool answered_ok() const;

  const std::unique_ptr<Descriptor> lock_;
  const room::Room room_;
  const std::string household_;
  Kept present_;  // at first as found, then the newest taken from the decision thread
  StateFile state_file_;
  JournalFile journal_file_;
  const std::int64_t chapter_bytes_most_;

  // Between the threads.
  Queue<Entry, entries_most> queue_;
  Latest<Snapshot> latest_;
  Descriptor timer_, urgent_, changed_, ended_;
  std::atomic<bool> woken_{false};          // the timer is set
  std::atomic<bool> lost_{false};           // the queue was full
  std::atomic<std::uint64_t> asked_{0};     // the newest sequence that persist() was called for
  std::atomic<std::uint64_t> answered_{1};  // twice a sequence, plus 1 if ok
  std::atomic<std::uint64_t> recorded_{0};  // up to here a restart finds everything
  std::atomic<bool> finish_{false}, finish_clean_{false}, ended_clean_{false};

  std::uint64_t sequence_ = 0;  // the decision thread's: of the last event

  // The writer thread's.
  std::uint64_t persisted_ = 0;  // the newest request that was answered
  Instant saved_ = long_ago;     // instant of the state that state.db holds
  bool journal_ok_ = true, journal_busy_ = false;
  bool failing_ = false;          // something is left to be tried again
  std::uint64_t in_journal_ = 0;  // sequence of the last event there
  bool run_begins_ = true;
  bool chapter_due_ = true;
  Instant chapter_ = long_ago;  // when the present chapter began
  std::int64_t chapter_bytes_ = 0;
  Incidents incidents_;
};

}  // namespace tidewright::store
