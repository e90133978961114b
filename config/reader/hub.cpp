#include <fmt/format.h>

#include "config/reader/draft.hpp"

namespace tidewright::config {

// The prefix is the hub's; the daemon's own topics are not below it, nor it below them.
void read_hub(Draft& draft) {
  if (!draft.hub) return;
  const Section& from = *draft.hub;
  Hub& hub = draft.household.hub;
  if (const Value* discovery = from.value("discovery")) hub.discovery = discovery->number > 0;
  if (const Value* homie = from.value("homie")) hub.homie = homie->number > 0;
  hub.prefix = from.text("prefix");
  const std::string& base = draft.household.base;
  if (from.told("prefix") == nullptr || (hub.prefix + "/").rfind(base + "/", 0) != 0) return;
  draft.problems.add(from.at("prefix"),
                     fmt::format("`prefix` is \"{}\", which begins as the daemon's own topics do; "
                                 "expected the hub's own, such as \"homeassistant\"",
                                 hub.prefix),
                     "The hub's settings name it. `base` is where the daemon publishes.");
}

}  // namespace tidewright::config
