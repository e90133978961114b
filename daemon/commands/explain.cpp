#include "daemon/commands/explain.hpp"

#include <sysexits.h>

#include <CLI/CLI.hpp>
#include <iostream>
#include <memory>

#include "core/rules/catalogue.hpp"
#include "daemon/commands/alarm_record.hpp"

namespace tidewright::commands {

int explain(const std::string& alarm, bool json, std::ostream& out, std::ostream& err) {
  const auto id = rules::rule_named(alarm);
  if (id) {
    const rules::Rule& rule = rules::rule(*id);
    out << (json ? as_json(rule) + "\n" : as_text(rule));
    return EX_OK;
  }
  err << "There is no alarm `" << alarm << "`. The alarms are:";
  for (const rules::Rule* rule : rules::catalogue) err << ' ' << rule->name;
  err << '\n';
  return EX_USAGE;
}

std::function<int()> prepare_explain(CLI::App& app) {
  struct Options {
    std::string alarm;
    bool json = false;
  };
  const auto options = std::make_shared<Options>();
  app.add_option("ALARM", options->alarm, "its name, as `list alarms` shows it")->required();
  app.add_flag("--json", options->json, "for programs");
  return [options] { return explain(options->alarm, options->json, std::cout, std::cerr); };
}

}  // namespace tidewright::commands
