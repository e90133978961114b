#include <fmt/format.h>

#include "config/reader/draft.hpp"
#include "config/reader/nearest.hpp"
#include "config/reader/wording.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::config {

void read_rules(Draft& draft) {
  auto& settings = draft.household.room.rules;
  settings = rules::default_settings();
  for (const Section& from : draft.rules) {
    const auto id = rules::rule_named(from.id());
    if (!id) {
      std::vector<std::string_view> names;
      names.reserve(rules::catalogue.size());
      for (const auto* rule : rules::catalogue) names.push_back(rule->name);
      draft.problems.add(from.at(),
                         fmt::format("there is no rule \"{}\"{}", from.id(),
                                     did_you_mean(nearest(from.id(), names), "\"")),
                         fmt::format("The rules are {}.", listed(names, "and")));
      continue;
    }
    if (from.told("on_delay") != nullptr) settings[*id].on_delay = duration(from, "on_delay");
    if (from.told("off_delay") != nullptr) settings[*id].off_delay = duration(from, "off_delay");
  }
}

}  // namespace tidewright::config
