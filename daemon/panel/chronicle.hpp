// The last decisions with their numbers: what was switched and why, which alarm came and went.
// Seen by comparing each state with the one before; bounded, and gone with the daemon (the journal
// keeps all of it).
#pragma once

#include <deque>
#include <mutex>
#include <string>

#include "core/room/room.hpp"
#include "core/state/state.hpp"
#include "daemon/panel/style.hpp"

namespace tidewright::panel {

class Chronicle {
 public:
  static constexpr std::size_t entries_most = 64;

  // By the reporter's thread, with each new state.
  void see(const room::Room&, const State&);
  // The newest first, as HTML. By any thread.
  std::string story(const Style&) const;

 private:
  enum class Kind : std::uint8_t { started, on, off, alarm, over };
  struct Entry {
    std::string at;  // ISO 8601
    Kind kind{};
    std::string what;  // the actuator, or the alarm's title
    std::string why;
  };
  void add(const State&, Kind, std::string what, std::string why);
  static std::string written(const Entry&, const Style&, const std::string& now);

  mutable std::mutex lock_;  // of the entries and `now_`
  std::deque<Entry> entries_;
  std::string now_;
  State before_;  // the reporter's thread alone
  bool begun_ = false;
};

}  // namespace tidewright::panel
