// What open pages are sent: a snapshot first, then each change once, with ids by which a page that
// was cut off goes on where it stood. Bounded: who is further behind than that gets a snapshot.
#pragma once

#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <deque>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>

#include "daemon/panel/page.hpp"

namespace tidewright::panel {

class Feed {
 public:
  static constexpr std::size_t changes_kept = 64;
  static constexpr std::size_t bytes_kept = std::size_t{128} * 1024;

  // `run`: told from every other run of the daemon by it.
  explicit Feed(std::uint64_t run);

  // By the reporter's thread; waits for nobody.
  void publish(Parts parts, std::string as_of);
  // Everybody who waits goes home.
  void close();

  // All parts as HTML, and when they were seen; empty before the first publish(). `own`: in place
  // of the part of that id.
  std::string main(const Part& own = {}) const;
  std::string as_of() const;

  // Where a page stands. From the id of the last event that it saw; 0: it must have a snapshot.
  std::uint64_t position(std::string_view last_event_id) const;
  // What a page at `position` is sent next, as an event stream has it, and moves `position` on.
  // Waits for it up to `patience`, then a beat comes. Null after close().
  std::shared_ptr<const std::string> next(std::uint64_t& position,
                                          std::chrono::milliseconds patience);

 private:
  struct Change {
    std::uint64_t number;
    std::shared_ptr<const std::string> text;
  };
  std::string event(std::string_view kind, std::uint64_t number, const std::string& html) const;
  std::shared_ptr<const std::string> ready(std::uint64_t& position) const;

  const std::string run_;
  mutable std::mutex lock_;  // of all that follows
  std::condition_variable changed_;
  Parts parts_;
  std::string as_of_;
  std::uint64_t number_ = 0;  // of the last change
  std::deque<Change> changes_;
  std::size_t bytes_ = 0;
  bool closed_ = false;
};

}  // namespace tidewright::panel
