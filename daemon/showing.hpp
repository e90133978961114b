// What the room looks like from outside: every message that the broker is to retain, by all
// conventions, and the removal of what earlier runs left there. Remembers over restarts what was
// told; that is on the disk before it is told. Used by the report thread.
#pragma once

#include <chrono>
#include <filesystem>
#include <string>
#include <vector>

#include "config/household.hpp"
#include "core/report/report.hpp"
#include "core/state/state.hpp"
#include "daemon/hub/manifest.hpp"
#include "daemon/hub/message.hpp"
#include "daemon/hub/plain.hpp"
#include "daemon/store/hub_file.hpp"

namespace tidewright {

class Showing {
 public:
  Showing(const config::Household& household, const std::filesystem::path& state_directory);

  // All of it, in the order in which it is to be published. An empty message takes its topic back.
  std::vector<hub::Message> everything(const State& state);

  // The broker has all of `shown`, which everything() gave last: what that took back need not be
  // known any more. True if everything() now gives something else.
  bool arrived(const std::vector<hub::Message>& shown);

 private:
  using Steady = std::chrono::steady_clock;
  hub::Message found_by_hub(const report::Report& report, const State& state);
  void promise(const std::vector<hub::Message>& messages);
  bool keep(hub::Manifest next);
  void take_back(std::vector<hub::Message>& messages) const;

  const config::Household& household_;
  hub::Place place_;
  store::HubFile file_;
  hub::Manifest known_;
  bool named_ = false;   // the ids in it are on the disk
  bool kept_ = false;    // all of it is
  bool tidied_ = false;  // nothing of earlier runs is left at the broker
  Steady::time_point tried_{};
  std::map<std::string, std::string> components_;  // offered
};

}  // namespace tidewright
