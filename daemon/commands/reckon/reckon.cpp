#include "daemon/commands/reckon/reckon.hpp"

#include <fmt/format.h>
#include <sysexits.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>
#include <memory>

#include "daemon/commands/reckon/known.hpp"
#include "daemon/commands/reckon/print.hpp"
#include "daemon/commands/reckon/sureness.hpp"

namespace tidewright::commands::reckon {
namespace {

struct Typed {
  const Quantity* quantity = nullptr;
  TypedOptions options;
  bool json = false;
  std::vector<std::string> strangers;  // words that are none of the options
};

// The first stranger that looks like an option, or the first of all.
const std::string& culprit(const std::vector<std::string>& strangers) {
  const auto at = std::find_if(strangers.begin(), strangers.end(),
                               [](const std::string& word) { return word.starts_with("-"); });
  return at == strangers.end() ? strangers.front() : *at;
}

Refusal no_such_quantity(const std::string& word) {
  std::string names;
  for (const Quantity* quantity : quantities()) {
    names += (names.empty() ? "" : ", ") + std::string(quantity->name);
  }
  return unknown(word.empty() ? "what to reckon" : word, word.empty() ? "nothing" : "no such thing",
                 "what to reckon", names, "See: tidewright reckon --help");
}

int refuse(const Refusal& refusal, const Quantity& quantity, std::ostream& err) {
  err << as_text(refusal, quantity.name);
  return refusal.exit_code;
}

void add_option(CLI::App& app, const Option& option, const std::shared_ptr<Typed>& typed,
                bool customary) {
  const UnitWords& unit = words(option.unit);
  const std::string name = option_name(option.stem, option.unit, customary);
  const std::string in_unit = unit.word.empty() ? "" : fmt::format("; in {}", unit.word);
  const std::string help =
      customary ? fmt::format("the same in {}", unit.customary_word)
                : fmt::format("{}{}{}", option.help, in_unit, option.required ? " (needed)" : "");
  app.add_option_function<std::string>(
         name, [typed, name](const std::string& text) { typed->options[name] = text; }, help)
      ->expected(0, 1)                                     // none: told by the option's own words
      ->multi_option_policy(CLI::MultiOptionPolicy::Join)  // twice: told, as no number
      ->delimiter(' ')
      ->type_name(option.unit == Unit::text ? "WORD" : "NUMBER");
}

void add_options(CLI::App& command, const Quantity& quantity, const std::shared_ptr<Typed>& typed) {
  for (const Option& option : quantity.options) {
    add_option(command, option, typed, false);
    if (!words(option.unit).customary_suffix.empty()) add_option(command, option, typed, true);
  }
  command
      .add_option(known_to, typed->options[known_to],
                  "limits that you know better: \"volume-l=2 temperature-c=0.2\"")
      ->type_name("WORDS");
  command.add_flag("--json", typed->json, "for programs");
}

// Its options are made when it is typed: a daemon that runs for years does not carry them.
void add_quantity(CLI::App& app, const Quantity& quantity, const std::shared_ptr<Typed>& typed) {
  CLI::App* command = app.add_subcommand(quantity.name, quantity.summary);
  command->footer(fmt::format("Example: {}", quantity.example));
  command->allow_extras();
  command->preparse_callback(
      [typed, command, &quantity](std::size_t) { add_options(*command, quantity, typed); });
  command->parse_complete_callback([typed, command, &quantity] {
    typed->quantity = &quantity;
    typed->strangers = command->remaining();
  });
}

}  // namespace

int reckon(const Quantity& quantity, const TypedOptions& typed, bool json, std::ostream& out,
           std::ostream& err) {
  auto inputs = read_inputs(quantity, typed);
  if (const auto* refusal = std::get_if<Refusal>(&inputs)) return refuse(*refusal, quantity, err);
  auto& numbers = std::get<Inputs>(inputs);
  if (const auto at = typed.find(known_to); at != typed.end()) {
    if (const auto refusal = read_limits(quantity, at->second, numbers)) {
      return refuse(*refusal, quantity, err);
    }
  }
  Outcome outcome = quantity.reckon(numbers);
  if (const auto* refusal = std::get_if<Refusal>(&outcome)) return refuse(*refusal, quantity, err);
  auto& reckoned = std::get<Reckoned>(outcome);
  add_sureness(quantity, numbers, reckoned);
  out << (json ? as_json(reckoned) : as_text(reckoned, numbers.customary()));
  return EX_OK;
}

std::function<int()> prepare(CLI::App& app) {
  const auto typed = std::make_shared<Typed>();
  app.require_subcommand(0, 1);
  app.allow_extras();
  app.preparse_callback([typed, &app](std::size_t) {
    for (const Quantity* quantity : quantities()) add_quantity(app, *quantity, typed);
  });
  return [typed, &app] {
    if (!typed->quantity) {
      const auto words = app.remaining();
      std::cerr << as_text(no_such_quantity(words.empty() ? "" : culprit(words)), "");
      return EX_USAGE;
    }
    if (!typed->strangers.empty()) {
      return refuse(no_such_option(*typed->quantity, culprit(typed->strangers)), *typed->quantity,
                    std::cerr);
    }
    return reckon(*typed->quantity, typed->options, typed->json, std::cout, std::cerr);
  };
}

}  // namespace tidewright::commands::reckon
