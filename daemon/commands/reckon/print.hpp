// How an answer and a refusal are shown: to a person, and to a program.
#pragma once

#include <string>
#include <string_view>

#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

// A line for each result, then what they stand on. In customary units, too, if `customary`.
std::string as_text(const Reckoned& reckoned, bool customary);

// One object. Keys of the results first; `in_range`, `formula`, `source` always; `uncertainty`, by
// result, where there is one.
std::string as_json(const Reckoned& reckoned);

std::string as_text(const Refusal& refusal, std::string_view quantity);

}  // namespace tidewright::commands::reckon
