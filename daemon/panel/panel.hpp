// The page for the wall and the phone. The reporter hands it each report; its threads answer
// browsers. Nothing of it can delay a command: the decision thread does not know it.
#pragma once

#include <memory>
#include <mutex>
#include <string>

#include "config/household.hpp"
#include "core/report/report.hpp"
#include "core/state/state.hpp"
#include "daemon/panel/asking.hpp"
#include "daemon/panel/chronicle.hpp"
#include "daemon/panel/feed.hpp"
#include "daemon/panel/history.hpp"
#include "daemon/panel/page.hpp"
#include "daemon/panel/server.hpp"

namespace tidewright::panel {

class Panel {
 public:
  // Opens it if the household's file wants it. None if it does not, or if the address cannot be
  // had: that is said in the log, and the daemon goes on without it.
  static std::unique_ptr<Panel> open(const config::Household& household,
                                     const std::string& state_directory);

  ~Panel();
  Panel(const Panel&) = delete;
  Panel& operator=(const Panel&) = delete;

  // Where the reporter finds what people ask and tell here.
  Counter& counter() { return asking_.counter(); }

  // By the reporter's thread, with each report and the state that it was made of.
  void show(const State& state, const report::Report& report);

 private:
  Panel(const config::Household& household, const std::string& state_directory,
        const std::string& token);
  Reply answer(const Call& call);
  Reply front(const Call& call) const;
  Reply tell(const Call& call);
  Reply history(const std::string& path) const;
  std::string page(Page page, const std::string& main, bool live = false) const;

  const config::Household& household_;
  const Style style_;
  Feed feed_;
  Chronicle chronicle_;
  History history_;
  Asking asking_;
  mutable std::mutex lock_;  // of the next two
  Instant now_ = long_ago;   // of the last report
  WallClock wall_;
  std::unique_ptr<Server> server_;  // the first to go: its threads use the rest
};

}  // namespace tidewright::panel
