// Collapses lines that repeat. Pure: the time comes in. Used by log.cpp only, under its lock.
#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace tidewright::log {

enum class Level : std::uint8_t { info, warning, error };

struct Line {
  Level level{};
  std::string text;
  friend bool operator==(const Line&, const Line&) = default;
};

class Repeats {
 public:
  using Time = std::chrono::steady_clock::time_point;
  static constexpr std::chrono::minutes window{10};
  static constexpr std::size_t remembered_max = 64;

  // What is to be written now that `text` is said: itself, or nothing if it was said less than
  // `window` ago; and counts that are due.
  std::vector<Line> said(Level level, std::string_view text, Time now);
  // Counts whose window is over by `now`; all of them with Time::max().
  std::vector<Line> due(Time now);

 private:
  struct Known {
    Level level{};
    Time first{};
    std::uint64_t again = 0;
  };
  std::map<std::string, Known, std::less<>> known_;
};

}  // namespace tidewright::log
