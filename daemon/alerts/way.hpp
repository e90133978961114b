// How a way to people stands, as a thing beside those of the report: `way/webhook`, `way/mail`.
#pragma once

#include <string>

#include "core/report/report.hpp"
#include "daemon/post/letter.hpp"

namespace tidewright::alerts {

struct Standing {
  post::Way way{};
  std::size_t waiting = 0;     // letters
  Instant arrived = long_ago;  // the last one, in this run of the daemon
  std::string trouble{};       // empty: it is open
};

report::Thing thing(const Standing& standing, const WallClock& wall);

}  // namespace tidewright::alerts
