#include "tests/unit/daemon/hub/offered.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "config/reader/reader.hpp"
#include "daemon/alerts/way.hpp"
#include "daemon/hub/parts.hpp"

namespace tidewright::support {

std::vector<std::string> config_names() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(TIDEWRIGHT_SOURCE_DIR "/config")) {
    if (entry.path().extension() == ".toml") names.push_back(entry.path().stem());
  }
  std::sort(names.begin(), names.end());
  return names;
}

config::Household read_config(const std::string& name) {
  std::ostringstream text;
  text << std::ifstream(TIDEWRIGHT_SOURCE_DIR "/config/" + name + ".toml").rdbuf();
  config::Understood understood = config::read(text.str());
  if (!understood.household) throw std::runtime_error(name + " is not understood");
  return std::move(*understood.household);
}

Offered::Offered(config::Household from) : household(std::move(from)), stage(household.room) {
  manifest.instance = "0123456789ab";
  manifest.parts = hub::adopt(household, {});
  stage.begin();
  stage.wait(std::chrono::hours{2});
}

report::Report Offered::report() const {
  report::Report report = report::describe(household.room, stage.state);
  const auto add = [&](post::Way way) {
    report.things.push_back(alerts::thing({.way = way}, report.wall));
  };
  if (household.alerts.webhook) add(post::Way::webhook);
  if (household.alerts.mail) add(post::Way::mail);
  return report;
}

std::vector<hub::Offer> Offered::offers(const report::Report& of) const {
  return hub::offers({household, of, manifest.parts, stage.state.armed.token});
}

}  // namespace tidewright::support
