#include "daemon/commands/ask.hpp"

#include <sysexits.h>

#include <CLI/CLI.hpp>
#include <iostream>
#include <memory>
#include <string>

#include "daemon/commands/correspond.hpp"
#include "daemon/commands/household_file.hpp"

namespace tidewright::commands {
namespace {

struct Options {
  Typed typed;
  std::string config;
  std::string broker;
  std::string base;
  std::string room;
  double patience_seconds = 10;
};

// The file says where the daemon is; what is typed beside it counts more.
int find(const Options& options, Reach& reach) {
  if (!options.config.empty()) {
    const HouseholdFile file = read_household(options.config);
    if (!file.household) return file.exit_code;
    reach.broker = file.household->broker;
    reach.place = {file.household->base, file.household->room.id};
  }
  if (!options.broker.empty()) reach.broker.uri = options.broker;
  if (!options.base.empty()) reach.place.base = options.base;
  if (!options.room.empty()) reach.place.room = options.room;
  reach.patience = std::chrono::milliseconds{static_cast<int>(options.patience_seconds * 1000)};
  return EX_OK;
}

std::function<int()> prepare(CLI::App& app, hub::Verb verb) {
  const auto options = std::make_shared<Options>();
  options->typed.verb = verb;
  app.add_option("words", options->typed.words, "What, and of which alarm or instrument");
  app.add_option("--who", options->typed.who, "The person; the login name if left out");
  if (verb == hub::Verb::ask) {
    app.add_option("--minutes", options->typed.minutes, "How long");
    app.add_option("--occurrence", options->typed.occurrence,
                   "Which occurrence of the alarm; the present one if left out");
    app.add_option("--why", options->typed.why, "Why it is shelved, in your words");
  }
  app.add_option("--config", options->config, "The household's file: its broker, base and room");
  app.add_option("--broker", options->broker, "mqtt://host:port or mqtts://host:port")
      ->envname("TIDEWRIGHT_BROKER");
  app.add_option("--base", options->base, "Of the daemon's topics; `tidewright` if left out");
  app.add_option("--room", options->room, "The room's id; `waterroom` if left out");
  app.add_option("--patience", options->patience_seconds, "Seconds to wait for an answer")
      ->check(CLI::Range(0.1, 3600.0));
  app.add_flag("--json", options->typed.json, "Print the answer as the daemon gave it");
  return [options] {
    Reach reach;
    const int found = find(*options, reach);
    return found == EX_OK ? correspond(options->typed, reach, std::cout, std::cerr) : found;
  };
}

}  // namespace

std::function<int()> prepare_ask(CLI::App& app) { return prepare(app, hub::Verb::ask); }
std::function<int()> prepare_tell(CLI::App& app) { return prepare(app, hub::Verb::tell); }

}  // namespace tidewright::commands
