// What was typed becomes the numbers of a quantity, or a refusal.
#pragma once

#include <map>
#include <string>
#include <variant>

#include "daemon/commands/reckon/quantity.hpp"

namespace tidewright::commands::reckon {

// Option name as typed ("--volume-gal") to its text.
using TypedOptions = std::map<std::string, std::string>;

// What to say to a word that is no option of the quantity.
Refusal no_such_option(const Quantity& quantity, const std::string& word);

std::variant<Inputs, Refusal> read_inputs(const Quantity& quantity, const TypedOptions& typed);

}  // namespace tidewright::commands::reckon
