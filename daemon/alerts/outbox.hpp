// The letters that have not arrived yet, in the order in which they were written. Pure; alerts
// keeps it on the disk.
#pragma once

#include <chrono>
#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/instant.hpp"
#include "daemon/alerts/compose.hpp"
#include "daemon/post/letter.hpp"

namespace tidewright::alerts {

// Of each way the oldest go beyond this.
inline constexpr std::size_t letters_most = 64;
// So often a receiver may refuse a letter before it is given up.
inline constexpr int refusals_most = 5;

class Outbox {
 public:
  // An empty one: of notices after `taken` letters will be written.
  Outbox(std::string instance, std::uint32_t taken);
  // None if the text is not to_text() of one.
  static std::optional<Outbox> of(std::string_view text);
  // At the start of the daemon: `kept` is what the disk had, `last` the newest number in the state
  // as found. Without `kept` nothing older than the state is told. A state that is older than
  // `kept` knew would give its numbers a second time: then they go on under `instance`.
  static Outbox resumed(const std::optional<Outbox>& kept, std::string instance,
                        std::uint32_t last);
  std::string to_text() const;

  const std::string& instance() const { return instance_; }
  std::uint32_t taken() const { return taken_; }

  struct Taken {
    bool news = false;
    std::size_t given_up = 0;  // old letters, for want of room
  };
  // Writes the letters of what the state announces and was not taken yet.
  Taken take(const config::Household& household, const State& state);
  // Those of one notice. A reminder takes the place of one that still waits.
  // Returns how many had to be given up for want of room.
  std::size_t put(std::uint32_t notice, const std::vector<Composed>& letters);
  // What may be sent that way now.
  std::vector<post::Letter> due(post::Way, Instant now) const;
  // When the next that only waits for its time may be sent; `never` if none does.
  Instant next_due(post::Way, Instant now) const;
  std::size_t waiting(post::Way) const;
  // False if the letter has been refused too often and is given up.
  bool settle(const post::Outcome&);
  // Of a way that the household does not want any more.
  void drop(post::Way);

 private:
  struct Entry {
    Composed composed;
    int refusals = 0;
  };

  std::string instance_;
  std::uint32_t taken_;
  std::deque<Entry> entries_;
};

}  // namespace tidewright::alerts
