#include <fmt/format.h>

#include "config/reader/draft.hpp"
#include "config/reader/nearest.hpp"
#include "config/reader/wording.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::config {
namespace {

// An alarm that may never be quiet may not be made so by the file either.
void refuse_quiet(const Section& from, const rules::Rule& rule, const room::RuleSettings& settings,
                  Problems& problems) {
  if (rule.may_be_shelved || (settings.on_delay == rule.on_delay && settings.in_service)) return;
  problems.add(
      from.at(settings.in_service ? "on_delay" : "in_service"),
      fmt::format("{} acts and is told at once: it is neither delayed nor silenced", rule.name),
      "Only its off_delay may be chosen.");
}

}  // namespace

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
    const Value* in_service = from.told("in_service");
    settings[*id].in_service = in_service == nullptr || in_service->number > 0;
    refuse_quiet(from, rules::rule(*id), settings[*id], draft.problems);
  }
}

}  // namespace tidewright::config
