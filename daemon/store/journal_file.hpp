// `journal.db`: the journal's lines in their order, a ring of 14 days. A chapter opens with the
// household's file and the state, at each start and once a day; whole chapters are dropped.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "core/base/instant.hpp"
#include "daemon/store/database.hpp"

namespace tidewright::store {

inline constexpr Duration journal_kept = std::chrono::hours{14 * 24};

// A line as it goes to the disk. `opens` marks the first line of a chapter.
struct Written {
  Instant at = long_ago;
  bool opens = false;
  std::string text;
};

class JournalFile {
 public:
  explicit JournalFile(const std::filesystem::path& file);

  const OpenDatabase& opened() const { return opened_; }
  // Of the last line that can be read; 0 and long_ago if there is none.
  std::uint64_t last_sequence() const { return last_sequence_; }
  Instant last() const { return last_; }

  // All or none; drops a slice of what is older than the ring. False if another program holds
  // the file: try again. Throws std::exception when the disk refuses.
  bool append(const std::vector<Written>& lines);

  // For readers: hands each line to `take`, in order.
  static void for_each_line(const std::filesystem::path& file,
                            const std::function<void(const std::string&)>& take);

 private:
  OpenDatabase opened_;
  std::uint64_t last_sequence_ = 0;
  Instant last_ = long_ago;
};

}  // namespace tidewright::store
