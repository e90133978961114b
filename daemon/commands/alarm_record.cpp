#include "daemon/commands/alarm_record.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <utility>
#include <vector>

#include "core/report/phrases.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::commands {
namespace {

using report::lasting;
using report::sentence;
using rules::Latching;
using rules::Priority;
using rules::Rule;

using Lines = std::vector<std::pair<std::string, std::string>>;

std::string priority_words(const Rule& rule) {
  switch (rule.priority) {
    case Priority::urgent:
      return "1: a trip happened or was impossible; water is loose or about to be";
    case Priority::soon:
      return "2: act within a day";
    case Priority::days:
      return "3: act within days";
  }
  return "";
}

std::string_view latching_word(Latching latching) {
  switch (latching) {
    case Latching::never:
      return "no";
    case Latching::at_once:
      return "yes";
    case Latching::on_repeat:
      return "when it comes again and again";
  }
  return "";
}

std::string repeated(const Rule& rule) {
  if (rule.said_again > Duration{0}) {
    return fmt::format("every {}, acknowledged or not", lasting(rule.said_again));
  }
  if (rule.priority == Priority::days) return "in the weekly digest, for as long as it stands";
  return fmt::format("every {} until acknowledged, every {} after that",
                     lasting(rules::said_again_after(rule, rule.priority, false)),
                     lasting(rules::said_again_after(rule, rule.priority, true)));
}

std::string suppression(const Rule& rule) {
  std::string shelving =
      rule.may_be_shelved
          ? fmt::format("may be shelved for {}", lasting(rules::shelf_longest(rule.priority)))
          : std::string("may never be shelved");
  if (!rule.consequence_of) return shelving;
  return fmt::format("{}; not told by itself while {} is on", shelving,
                     rules::rule(*rule.consequence_of).name);
}

Lines lines(const Rule& rule) {
  const rules::Record& record = rule.record;
  return {
      {"Judged from", sentence(std::string(record.source))},
      {"Limit", sentence(std::string(record.limit))},
      {"Origin of the limit", sentence(std::string(record.origin))},
      {"Likely causes", sentence(std::string(record.causes))},
      {"If nobody acts", sentence(std::string(record.consequence))},
      {"What to do", sentence(std::string(record.action))},
      {"Time to act", sentence(lasting(rule.respond_within))},
      {"What the daemon does", sentence(std::string(record.automatic))},
      {"Priority", sentence(priority_words(rule))},
      {"Stays until reset", sentence(std::string(latching_word(rule.latching)))},
      {"Delays",
       fmt::format("On after {}, off after {}.", lasting(rule.on_delay), lasting(rule.off_delay))},
      {"Deadband",
       sentence(std::string(record.deadband.empty() ? "none, the delays alone" : record.deadband))},
      {"Said again", sentence(repeated(rule))},
      {"Suppression", sentence(suppression(rule))},
      {"Test", sentence(std::string(record.test))},
  };
}

}  // namespace

std::string as_text(const Rule& rule) {
  std::string text = fmt::format("{}: {}\n", rule.name, rule.title);
  for (const auto& [label, content] : lines(rule)) {
    text += fmt::format("  {:<21} {}\n", label + ":", content);
  }
  return text;
}

std::string as_json(const Rule& rule) {
  const rules::Record& record = rule.record;
  nlohmann::ordered_json object{
      {"id", rule.name},
      {"title", rule.title},
      {"priority", static_cast<int>(rule.priority)},
      {"source", record.source},
      {"limit", record.limit},
      {"origin", record.origin},
      {"deadband", record.deadband},
      {"causes", record.causes},
      {"consequence", record.consequence},
      {"action", record.action},
      {"respond_within_min", seconds(rule.respond_within) / 60},
      {"automatic", record.automatic},
      {"latching", latching_word(rule.latching)},
      {"on_delay_s", seconds(rule.on_delay)},
      {"off_delay_s", seconds(rule.off_delay)},
      {"said_again_min", seconds(rules::said_again_after(rule, rule.priority, false)) / 60},
      {"may_be_shelved", rule.may_be_shelved},
      {"consequence_of", nullptr},
      {"test", record.test},
  };
  if (rule.consequence_of) object["consequence_of"] = rules::rule(*rule.consequence_of).name;
  return object.dump();
}

std::string as_markdown(const Rule& rule) {
  std::string text = fmt::format("\n## {}\n\n`{}`\n\n", rule.title, rule.name);
  for (const auto& [label, content] : lines(rule)) {
    text += fmt::format("- **{}**: {}\n", label, content);
  }
  return text;
}

std::string alarms_document() {
  std::string text =
      "# The alarms\n\n"
      "Made by `tidewright list alarms --markdown`; a test compares. Delays are the defaults; the "
      "household's file may change them.\n\n"
      "| alarm | priority | what it says | time to act |\n|---|---|---|---|\n";
  for (const Rule* rule : rules::catalogue) {
    text += fmt::format("| `{}` | {} | {} | {} |\n", rule->name, static_cast<int>(rule->priority),
                        rule->title, lasting(rule->respond_within));
  }
  for (const Rule* rule : rules::catalogue) text += as_markdown(*rule);
  return text;
}

}  // namespace tidewright::commands
