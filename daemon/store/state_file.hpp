// `state.db`: the one row that a restart begins with. Every write goes to the platter at once.
#pragma once

#include <cstdint>
#include <string>

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
  // if it could not be read.
  StateFile(const std::filesystem::path& file, const room::Room& room, Kept& kept);

  // The file as found at the start.
  const OpenDatabase& opened() const { return opened_; }
  // What the file held was read, if only from a copy.
  bool was_read() const { return was_read_; }
  // The state's text as it stood there: things by the names of the household of then.
  const std::string& text() const { return text_; }
  // The disk took the mark that a run is under way.
  bool marked() const { return marked_; }

  // Throws std::exception when the disk refuses; the old row is then still there, whole. A file
  // that could not be opened is tried anew each time.
  void write(const room::Room& room, const Kept& kept);

 private:
  const char* read(SQLite::Database& database, const room::Room& room, Kept& kept);
  void begin_anew(const room::Room& room, const char* trouble);

  std::filesystem::path file_;
  OpenDatabase opened_;
  std::string text_;
  bool was_read_ = false, marked_ = false;
};

}  // namespace tidewright::store
