// Every rule, in the order of RuleId. A new rule is one file, one row here, and its scenario.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "core/rules/rule.hpp"

namespace tidewright::rules {

extern const std::array<const Rule*, room::rule_count> catalogue;

const Rule& rule(room::RuleId);
// By name, for files and people; none if there is no such rule.
std::optional<room::RuleId> rule_named(std::string_view name);
// The delays of the catalogue, for a room whose file says nothing of them.
room::PerRule<room::RuleSettings> default_settings();

// Judges every rule and applies its delays. Called once a step.
void judge(const picture::Picture&, state::Findings&, Wake&);

}  // namespace tidewright::rules
