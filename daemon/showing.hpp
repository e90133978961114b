// What the room looks like from outside: every message that the broker is to retain, by all
// conventions, and the removal of what earlier runs left there. Remembers over restarts what was
// told; that is on the disk before it is told. Used by the report thread.
#pragma once

#include <chrono>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "config/household.hpp"
#include "core/report/report.hpp"
#include "core/state/state.hpp"
#include "daemon/hub/homie.hpp"
#include "daemon/hub/manifest.hpp"
#include "daemon/hub/message.hpp"
#include "daemon/hub/plain.hpp"
#include "daemon/store/text_file.hpp"

namespace tidewright {

class Showing {
 public:
  // What two lines are to publish, each in its order. An empty message takes its topic back.
  struct Everything {
    std::vector<hub::Message> plain;  // and discovery
    std::vector<hub::Message> homie;
  };

  Showing(const config::Household& household, const std::filesystem::path& state_directory);

  Everything everything(const State& state, const report::Report& report);

  // The broker has all of what everything() gave last: what that took back need not be known any
  // more. True if everything() now gives something else.
  bool arrived(const std::vector<hub::Message>& plain, const std::vector<hub::Message>& homie);

  // With it Homie's ids and those that have been given to things.
  const hub::Manifest& manifest() const { return known_; }
  // What a Homie controller has set, if that can be.
  std::optional<hub::HomieSet> set(const State& state, const hub::Letter& letter) const;

 private:
  using Steady = std::chrono::steady_clock;
  Everything made(const State& state, const report::Report& report);
  void promise(const Everything& all);
  bool keep(hub::Manifest next);
  void take_back(Everything& all) const;
  bool is_homies(const std::string& topic) const;
  std::string homie_state() const { return hub::homie_device(known_) + "/$state"; }

  const config::Household& household_;
  hub::Place place_;
  store::TextFile file_;
  hub::Manifest known_;
  bool named_ = false;   // the ids in it are on the disk
  bool kept_ = false;    // all of it is
  bool tidied_ = false;  // nothing of earlier runs is left at the broker
  Steady::time_point tried_{};
  std::map<std::string, std::string> components_;  // offered
};

}  // namespace tidewright
