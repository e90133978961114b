// The stretch of the journal around each alarm, kept beyond the ring: a file of text for each, in
// the folder `incidents`, which `tidewright replay` lives through like the journal itself.
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/room/room.hpp"
#include "core/state/state.hpp"
#include "daemon/store/journal_file.hpp"

namespace tidewright::store {

// How many of them there are; the oldest go first.
struct IncidentBounds {
  std::size_t files_most = 40;
  std::uintmax_t bytes_most = 64UL * 1024 * 1024;
};

// The writer thread's, like the journal.
class Incidents {
 public:
  explicit Incidents(std::filesystem::path directory, const IncidentBounds& bounds = {});

  // The state as found at the start: what stands in it is no news.
  void begin(const State& state);
  // Called with each new state. An alarm that was raised since the one before begins an incident,
  // if none is under way.
  void notice(const State& state);
  // A file must be written: when an incident begins, and again when it is over. `ending`: the
  // daemon goes down.
  bool due(Instant now, bool ending) const;
  // Writes it: from the beginning of the chapter before the present one (an hour or more, or the
  // end of the run before) up to now, closed by `chapter`, which is the state after the last line.
  // Never throws; what the disk refuses is due again.
  void write(const JournalFile&, const std::vector<Written>& chapter, Instant now, bool ending);

 private:
  struct UnderWay {
    Instant raised = long_ago;
    std::string name;
    std::int64_t first_line = 0;  // id in the journal; 0: not looked up yet
    bool begun = false;           // its first version is on the disk
  };
  bool over(Instant now, bool ending) const;
  void forget_the_oldest() const;

  std::filesystem::path directory_;
  IncidentBounds bounds_;
  room::PerRule<std::uint32_t> occurrences_;
  std::optional<UnderWay> under_way_;
};

}  // namespace tidewright::store
