// `journal.db`: the journal's lines in their order, a ring bounded by age and by size. A chapter
// opens with the household's file and the state, at each start and once an hour; whole chapters
// are dropped.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "core/base/instant.hpp"
#include "daemon/store/database.hpp"

namespace tidewright::store {

// How much of it there is.
struct Ring {
  Duration kept = std::chrono::hours{14 * 24};
  std::int64_t bytes_most = 256L * 1024 * 1024;  // on the disk; a quiet room writes 3 MB a day
};

// A line as it goes to the disk. `opens` marks the first line of a chapter.
struct Written {
  Instant at = long_ago;
  bool opens = false;
  std::string text;
};

class JournalFile {
 public:
  using Take = std::function<void(const std::string&)>;

  JournalFile(const std::filesystem::path& file, const Ring& ring);

  // The file as found at the start.
  const OpenDatabase& opened() const { return opened_; }
  // Of the last line that can be read; 0 and long_ago if there is none.
  std::uint64_t last_sequence() const { return last_sequence_; }
  Instant last() const { return last_; }

  // All or none; drops a slice of what is beyond the ring. False if another program holds the
  // file: try again. Throws std::exception when the disk refuses; a file that could not be opened
  // is tried anew each time.
  bool append(const std::vector<Written>& lines);

  // The household's file as the newest chapter has it; empty if there is none.
  std::string newest_household() const;
  // The lines after the event of that sequence; all of the newest chapter if it is not in there.
  std::vector<std::string> lines_after(std::uint64_t sequence) const;
  // The id of the line with which the last chapter but one begins, or the only one; 0 if there is
  // none.
  std::int64_t last_chapter_but_one() const;
  void for_each_line_from(std::int64_t id, const Take& take) const;

  // For readers: hands each line to `take`, in order.
  static void for_each_line(const std::filesystem::path& file, const Take& take);
  // The same of the chapter in which `since` lies and of those after it, of the lines that hold one
  // of the words. May be called beside the writer. Throws std::exception if it cannot be read.
  static void for_each_line_since(const std::filesystem::path& file, Instant since,
                                  const std::vector<std::string>& words, const Take& take);

 private:
  void drop_what_is_old(Instant newest);
  void drop_below(std::int64_t id);
  std::int64_t bytes() const;

  std::filesystem::path file_;
  Ring ring_;
  OpenDatabase opened_;
  std::uint64_t last_sequence_ = 0;
  Instant last_ = long_ago;
};

}  // namespace tidewright::store
