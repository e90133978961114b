// `state.db`: the one row that a restart begins with. Every write goes to the platter at once.
#pragma once

#include <cstdint>

#include "core/room/room.hpp"
#include "core/state/state.hpp"
#include "daemon/store/database.hpp"

namespace tidewright::store {

struct Kept {
  std::uint64_t sequence = 0;  // of the last event that went into `state`
  Instant at = long_ago;       // of that event
  bool clean = false;          // the run ended on purpose after it
  State state;
};

class StateFile {
 public:
  // Opens, reads, and marks the run as under way. `kept` is untouched if there was no file, or
  // if it had to be set aside.
  StateFile(const std::filesystem::path& file, const room::Room& room, Kept& kept);

  // The file as found; without a database every write fails.
  const OpenDatabase& opened() const { return opened_; }
  // The disk took the mark that a run is under way.
  bool marked() const { return marked_; }

  // Throws std::exception when the disk refuses; the old row is then still there, whole.
  void write(const room::Room& room, const Kept& kept);

 private:
  bool read(const room::Room& room, Kept& kept);

  OpenDatabase opened_;
  bool marked_ = false;
};

}  // namespace tidewright::store
