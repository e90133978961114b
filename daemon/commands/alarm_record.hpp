// An alarm's whole record as a person, a program or the docs read it.
#pragma once

#include <string>

#include "core/rules/rule.hpp"

namespace tidewright::commands {

std::string as_text(const rules::Rule&);
// One JSON object; times in seconds, with their unit in the name.
std::string as_json(const rules::Rule&);
// A section of docs/alarms.md.
std::string as_markdown(const rules::Rule&);

// All of docs/alarms.md.
std::string alarms_document();

}  // namespace tidewright::commands
