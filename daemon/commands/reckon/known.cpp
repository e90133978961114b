#include "daemon/commands/reckon/known.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sstream>

namespace tidewright::commands::reckon {
namespace {

std::string amount(double limit, const Option& option) {
  const std::string_view unit = words(option.unit).word;
  return fmt::format("{:.3g}{}{}", limit, unit.empty() ? "" : " ", unit);
}

std::string names(const Quantity& quantity) {
  std::string all;
  for (const Option& option : quantity.options) {
    if (option.known.exactly()) continue;
    all += (all.empty() ? "" : ", ") + option_name(option.stem, option.unit).substr(2);
  }
  return all;
}

struct Named {
  const Option* option = nullptr;
  bool customary = false;
};

// The option of that name, if it is one that is not known exactly.
Named option_named(const Quantity& quantity, const std::string& name) {
  for (const Option& option : quantity.options) {
    if (option.known.exactly()) continue;
    for (const bool customary : {false, true}) {
      if (name == option_name(option.stem, option.unit, customary)) return {&option, customary};
    }
  }
  return {};
}

}  // namespace

double limit_of(const Option& option, const Inputs& inputs) {
  const std::string key = option_key(option);
  if (const auto typed = inputs.limit(key)) return *typed;
  return option.known.fraction * std::abs(inputs[key]) + option.known.absolute;
}

std::string words(const Option& option, const Inputs& inputs) {
  if (const auto typed = inputs.limit(option_key(option))) return "to " + amount(*typed, option);
  const Known& known = option.known;
  if (known.fraction == 0) return "to " + amount(known.absolute, option);
  return fmt::format("to {:.3g} %{}", 100 * known.fraction,
                     known.absolute == 0 ? "" : " and " + amount(known.absolute, option));
}

std::optional<Refusal> read_limits(const Quantity& quantity, const std::string& text,
                                   Inputs& inputs) {
  std::istringstream in(text);
  for (std::string one; in >> one;) {
    const std::size_t equals = std::min(one.find('='), one.size());
    const Named named = option_named(quantity, "--" + one.substr(0, equals));
    const double limit = read_number(one.substr(std::min(equals + 1, one.size()))).value_or(-1);
    if (!named.option || limit < 0) {
      return unknown(known_to, "`" + one + "`", "NAME=LIMIT, with blanks between several",
                     names(quantity), R"(Type them as here: "volume-l=2 temperature-c=0.2")");
    }
    // A limit is a difference: a degree of it is no temperature.
    const double factor = named.customary ? words(named.option->unit).factor : 1;
    inputs.set_limit(option_key(*named.option), limit * factor);
  }
  return std::nullopt;
}

}  // namespace tidewright::commands::reckon
