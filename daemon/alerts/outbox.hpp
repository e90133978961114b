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
  // Of an outbox that has just been made; letters are written of notices after `taken`.
  Outbox(std::string instance, std::uint32_t taken);
  // None if the text is not to_text() of one.
  static std::optional<Outbox> of(std::string_view text);
  std::string to_text() const;

  const std::string& instance() const { return instance_; }
  std::uint32_t taken() const { return taken_; }

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
  // Takes over the letters of one whose numbers cannot be gone on with.
  void inherit(const Outbox& older) { entries_ = older.entries_; }
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
