#include "daemon/commands/explain.hpp"

#include <sysexits.h>

#include <CLI/CLI.hpp>
#include <iostream>
#include <memory>

#include "core/rules/catalogue.hpp"
#include "daemon/commands/alarm_record.hpp"
#include "daemon/commands/household_file.hpp"
#include "daemon/commands/trace.hpp"

namespace tidewright::commands {
namespace {

int no_such_alarm(const std::string& alarm, std::ostream& err) {
  err << "There is no alarm `" << alarm << "`. The alarms are:";
  for (const rules::Rule* rule : rules::catalogue) err << ' ' << rule->name;
  err << '\n';
  return EX_USAGE;
}

}  // namespace

int explain(const std::string& alarm, bool json, std::ostream& out, std::ostream& err) {
  const auto id = rules::rule_named(alarm);
  if (!id) return no_such_alarm(alarm, err);
  const rules::Rule& rule = rules::rule(*id);
  out << (json ? as_json(rule) + "\n" : as_text(rule));
  return EX_OK;
}

int explain_trace(const std::string& alarm, const std::string& config_file, std::ostream& out,
                  std::ostream& err) {
  const auto id = rules::rule_named(alarm);
  if (!id) return no_such_alarm(alarm, err);
  const HouseholdFile file = read_household(config_file);
  if (!file.household) return file.exit_code;
  out << trace(file.household->room, *id);
  return EX_OK;
}

std::function<int()> prepare_explain(CLI::App& app) {
  struct Options {
    std::string alarm;
    bool json = false;
    std::string traced;
    std::string config_file;
  };
  const auto options = std::make_shared<Options>();
  auto* alarm = app.add_option("ALARM", options->alarm, "its name, as `list alarms` shows it");
  app.add_flag("--json", options->json, "for programs");
  auto* config = app.add_option("--config", options->config_file, "the household's file");
  auto* trace =
      app.add_option("--trace", options->traced,
                     "how this alarm comes about in the household's room, stage by stage");
  trace->excludes(alarm)->needs(config);
  app.require_option(1, 0);
  return [options] {
    if (options->traced.empty()) {
      return explain(options->alarm, options->json, std::cout, std::cerr);
    }
    return explain_trace(options->traced, options->config_file, std::cout, std::cerr);
  };
}

}  // namespace tidewright::commands
