// Tells people on the ways that need no hub. What core has announced becomes a letter on the disk,
// and stays there until its receiver has it: a crash loses none, and one that is sent again has
// the same id. Used by the report thread; nothing here waits.
#pragma once

#include <chrono>
#include <filesystem>
#include <string>
#include <vector>

#include "config/household.hpp"
#include "core/report/report.hpp"
#include "core/state/state.hpp"
#include "daemon/alerts/courier.hpp"
#include "daemon/alerts/outbox.hpp"
#include "daemon/clock.hpp"
#include "daemon/store/text_file.hpp"

namespace tidewright::alerts {

class Alerts {
 public:
  using Steady = std::chrono::steady_clock;

  // `found`: the state with which the daemon begins; what it announced is not told anew where there
  // is no outbox yet.
  Alerts(const config::Household& household, const Clock& clock,
         const std::filesystem::path& state_directory, const State& found,
         std::filesystem::path courier);

  // Each state in its order; what is new in its notices is written down to be sent.
  void take(const State& state);
  // Sends the courier and hears what it tells. Returns when to call it again.
  Steady::time_point tend();
  // Whether ways() has changed since it was asked for last.
  bool has_news() const { return has_news_; }
  // How each way stands, to be shown with the report: `way/webhook`, `way/mail`.
  std::vector<report::Thing> ways();

 private:
  struct Road {
    post::Way way{};
    int failures = 0;               // in a row
    Steady::time_point next_try{};  // not before
    Instant arrived = long_ago;     // the last letter
    std::string trouble{};          // empty: none known
  };

  void begin(const State& found);
  void write();
  void settle(const post::Outcome& outcome);
  void fail(Road& road, const std::string& why);
  void set_out();

  const config::Household& household_;
  const Clock& clock_;
  store::TextFile file_;
  Outbox outbox_;
  Courier courier_;
  std::vector<Road> roads_;
  std::vector<post::Letter> with_courier_;  // and nothing told of them yet
  bool written_ = true;
  bool has_news_ = true;
  Steady::time_point write_again_{};
};

// Whether the files that the household names for its ways can be read and hold what they should.
// A sentence for a person; empty if all is well. Asked at the start.
std::string trouble(const config::Alerts& alerts);

}  // namespace tidewright::alerts
