#include "daemon/commands/reckon/typed_numbers.hpp"

#include <fmt/format.h>
#include <sysexits.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "config/reader/nearest.hpp"

namespace tidewright::commands::reckon {
namespace {

// A customary unit's limits rounded inwards, so that what is allowed in words is taken.
std::string allowed(const Option& option, bool customary) {
  const UnitWords& unit = words(option.unit);
  const std::string_view word = customary ? unit.customary_word : unit.word;
  const double low = customary ? to_customary(option.unit, option.low) : option.low;
  const double high = customary ? to_customary(option.unit, option.high) : option.high;
  const auto shown = [](double limit) {
    return limit >= 1e5 ? fmt::format("{:.0f}", limit) : fmt::format("{:.5g}", limit);
  };
  return fmt::format("{} to {}{}{}", shown(low), shown(high), word.empty() ? "" : " ", word);
}

std::string expected(const Option& option, bool customary) {
  const UnitWords& unit = words(option.unit);
  const std::string_view word = customary ? unit.customary_word : unit.word;
  return fmt::format("{}{}{}", option.help, word.empty() ? "" : ", in ", word);
}

Refusal not_a_number(const std::string& name, const std::string& text, const Option& option,
                     bool customary) {
  const bool comma = text.find(',') != std::string::npos;
  const std::string remedy = text.empty() ? "Type a number behind it."
                             : comma
                                 ? "Write the decimals behind a point: 25.5"
                                 : "Write the number alone: its unit stands in the option's name.";
  return {name,
          text.empty() ? "nothing" : fmt::format("`{}`, which is no number", text),
          expected(option, customary),
          allowed(option, customary),
          remedy,
          EX_USAGE};
}

std::optional<Refusal> read(const Option& option, const TypedOptions& typed, bool customary,
                            Inputs& inputs) {
  const std::string name = option_name(option.stem, option.unit, customary);
  const auto at = typed.find(name);
  if (at == typed.end()) return std::nullopt;
  if (option.unit == Unit::text) {
    inputs.set(option_key(option), at->second);
    return std::nullopt;
  }
  const auto value = read_number(at->second);
  if (!value) return not_a_number(name, at->second, option, customary);
  const double metric = customary ? from_customary(option.unit, *value) : *value;
  // A limit that was typed in gallons is not missed by a rounding.
  const double slack = customary ? 1e-9 * std::abs(option.high) : 0;
  if (!(metric >= option.low - slack && metric <= option.high + slack)) {
    return Refusal{name,
                   at->second,
                   expected(option, customary),
                   allowed(option, customary),
                   "Check the number and its unit.",
                   EX_DATAERR};
  }
  inputs.set(option_key(option), std::clamp(metric, option.low, option.high));
  if (customary) inputs.set_customary();
  return std::nullopt;
}

std::string both_names(const Option& option) {
  std::string name = option_name(option.stem, option.unit);
  if (words(option.unit).customary_suffix.empty()) return name;
  return name + " or " + option_name(option.stem, option.unit, true);
}

}  // namespace

Refusal no_such_option(const Quantity& quantity, const std::string& word) {
  std::vector<std::string> names;
  for (const Option& option : quantity.options) {
    names.push_back(option_name(option.stem, option.unit));
    if (!words(option.unit).customary_suffix.empty()) {
      names.push_back(option_name(option.stem, option.unit, true));
    }
  }
  const std::vector<std::string_view> candidates(names.begin(), names.end());
  std::string_view meant = config::nearest(word, candidates);
  // "--temperature" lacks only its unit.
  const auto longer = std::find_if(candidates.begin(), candidates.end(), [&](std::string_view one) {
    return word.size() > 3 && one.starts_with(word);
  });
  if (longer != candidates.end()) meant = *longer;
  return unknown(word, "a word that is no option here", "the options of this command",
                 fmt::format("{}, --known-to, --json", fmt::join(candidates, ", ")),
                 meant.empty() ? fmt::format("See: tidewright reckon {} --help", quantity.name)
                               : fmt::format("Did you mean {}?", meant));
}

std::variant<Inputs, Refusal> read_inputs(const Quantity& quantity, const TypedOptions& typed) {
  Inputs inputs;
  for (const Option& option : quantity.options) {
    if (const auto refusal = read(option, typed, false, inputs)) return *refusal;
    if (!words(option.unit).customary_suffix.empty()) {
      const std::string other = option_name(option.stem, option.unit, true);
      if (inputs.has(option_key(option)) && typed.contains(other)) {
        return unknown(other, "the same quantity a second time", expected(option, true), "",
                       "Type it in one unit only.");
      }
      if (const auto refusal = read(option, typed, true, inputs)) return *refusal;
    }
    if (option.required && !inputs.has(option_key(option))) {
      Refusal refusal = missing(both_names(option), std::string(option.help),
                                fmt::format("Type it, as here: {}", quantity.example));
      if (option.unit != Unit::text) refusal.allowed = allowed(option, false);
      return refusal;
    }
    if (option.otherwise) inputs.set_otherwise(option_key(option), *option.otherwise);
  }
  return inputs;
}

}  // namespace tidewright::commands::reckon
