// What outlives the daemon: the latch, alarms, ledger and demand in `state.db`, and the journal of
// every event in `journal.db`. The decision thread hands over and goes on; a writer thread owns
// the disk, so that no command ever waits for it.
//
// The order that the loop keeps: commands out, record, persist if the effects asked for it,
// announce once committed() has reached that sequence.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include "core/event.hpp"
#include "core/room/room.hpp"
#include "core/state/state.hpp"
#include "daemon/store/journal_file.hpp"

namespace tidewright::store {

class Writer;

// What the disk held of the run before.
struct Found {
  State state;              // as it was, for things that still have their name; Started makes
                            // step forget what does not outlive a restart
  bool clean = false;       // the last run ended on purpose and its state was read, or none was
  bool readable = true;     // the state of the last run was read, or there was none
  Instant last = long_ago;  // of the last record; long_ago at the very first start
};

// How far the disk has come. `ok` is of the last write: it feeds Recorded.
struct Committed {
  std::uint64_t sequence = 0;  // every persist() up to here is answered, for better or worse
  bool ok = true;
  friend bool operator==(const Committed&, const Committed&) = default;
};

struct Opened;

// One for a daemon. All members but close() are called by the decision thread and never wait.
class Store {
 public:
  // Opens or creates both files in `directory`. What cannot be read is set aside under another
  // name, and the start is then unclean. A disk that refuses is no obstacle: the store works on
  // and says so by Committed. Refused only if another daemon keeps its state there, or a newer
  // format is found.
  //   household  text of the household's file, kept in the journal so that a night can be replayed
  //   ring       how much of the journal is kept
  static Opened open(const std::filesystem::path& directory, const room::Room& room,
                     std::string_view household, const Ring& ring = {});
  ~Store();
  Store(const Store&) = delete;
  Store& operator=(const Store&) = delete;

  const Found& found() const { return found_; }
  // What a person should know of the opening, in whole sentences, for the log.
  const std::vector<std::string>& remarks() const { return remarks_; }

  // After each step, once its commands have left. `raw` is the payload that the event was made
  // of (its first 255 bytes are kept) or empty; `state` is as step left it. Written some 20 ms
  // later; if the queue of 1024 is full the event is lost and Committed says not ok.
  // Returns the event's sequence number, which grows by one with every event, over restarts too.
  std::uint64_t record(const Event& event, std::string_view raw, const State& state);

  // The effects held a Persist: commits all that was recorded at once, and to the platter.
  void persist();

  // Readable (epoll) when committed() may have changed; committed() makes it unreadable again.
  int descriptor() const;
  Committed committed();
  // The last event that a restart would know of, however this run ends short of a power cut.
  std::uint64_t recorded() const;

  // The last call, after the last record(): commits everything, and that this end was on purpose.
  // Waits a second at most. False if the disk did not take it; the next start is then unclean.
  // Without it (a crash, the destructor alone) the next start is unclean.
  bool close();

 private:
  Store(std::shared_ptr<Writer> writer, Found found, std::vector<std::string> remarks);

  std::shared_ptr<Writer> writer_;
  Found found_;
  std::vector<std::string> remarks_;
  std::thread thread_;
};

struct Opened {
  std::unique_ptr<Store> store;  // or none, and
  std::string refused;           // why not, for a person
};

}  // namespace tidewright::store
