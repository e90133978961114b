#include "daemon/log/repeats.hpp"

#include <fmt/format.h>

namespace tidewright::log {

std::vector<Line> Repeats::said(Level level, std::string_view text, Time now) {
  std::vector<Line> lines = due(now);
  if (const auto known = known_.find(text); known != known_.end()) {
    ++known->second.again;
    return lines;
  }
  lines.push_back({level, std::string(text)});
  // A flood of different lines is not collapsed, but neither is it remembered.
  if (known_.size() < remembered_max) known_.emplace(text, Known{level, now, 0});
  return lines;
}

std::vector<Line> Repeats::due(Time now) {
  std::vector<Line> lines;
  for (auto entry = known_.begin(); entry != known_.end();) {
    const auto& [text, known] = *entry;
    if (now != Time::max() && now - known.first < window) {
      ++entry;
      continue;
    }
    if (known.again > 0) {
      lines.push_back({known.level, fmt::format("{} (x {} in 10 min)", text, known.again)});
    }
    entry = known_.erase(entry);
  }
  return lines;
}

}  // namespace tidewright::log
