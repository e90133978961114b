// What hubs are offered of a household of config/, as the daemon offers it.
#pragma once

#include <string>
#include <vector>

#include "config/household.hpp"
#include "daemon/hub/message.hpp"
#include "daemon/hub/offer.hpp"
#include "tests/support/stage.hpp"

namespace tidewright::support {

// The names of config/*.toml without their ending, sorted.
std::vector<std::string> config_names();
// Throws if it is not understood.
config::Household read_config(const std::string& name);

// A household at work for two hours, with a manifest that has no past.
struct Offered {
  explicit Offered(config::Household from);
  report::Report report() const;
  std::vector<hub::Offer> offers(const report::Report&) const;

  config::Household household;
  hub::Manifest manifest;
  Stage stage;
};

}  // namespace tidewright::support
