// The page for the wall and the phone. The reporter hands it each report; its threads answer
// browsers. Nothing of it can delay a command: the decision thread does not know it.
#pragma once

#include <memory>
#include <mutex>
#include <string>

#include "config/household.hpp"
#include "core/report/report.hpp"
#include "core/state/state.hpp"
#include "daemon/panel/chronicle.hpp"
#include "daemon/panel/feed.hpp"
#include "daemon/panel/history.hpp"
#include "daemon/panel/server.hpp"

namespace tidewright::panel {

class Panel {
 public:
  // Opens it if the household's file wants it. None if it does not, or if the address cannot be
  // had: that is said in the log, and the daemon goes on without it.
  static std::unique_ptr<Panel> open(const config::Household& household,
                                     const std::string& state_directory);

  // By the reporter's thread, with each report and the state that it was made of.
  void show(const State& state, const report::Report& report);

 private:
  Panel(const config::Household& household, const std::string& state_directory);
  Reply answer(const std::string& path) const;

  const config::Household& household_;
  const Style style_;
  Feed feed_;
  Chronicle chronicle_;
  History history_;
  mutable std::mutex lock_;  // of the next two
  Instant now_ = long_ago;   // of the last report
  WallClock wall_;
  std::unique_ptr<Server> server_;  // the first to go: its threads use the rest
};

}  // namespace tidewright::panel
