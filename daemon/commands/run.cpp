#include "daemon/commands/run.hpp"

#include <fmt/format.h>
#include <malloc.h>
#include <sysexits.h>
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <array>
#include <csignal>
#include <cstdlib>
#include <optional>

#include "daemon/alerts/alerts.hpp"
#include "daemon/clock.hpp"
#include "daemon/commands/household_file.hpp"
#include "daemon/inbox.hpp"
#include "daemon/log/log.hpp"
#include "daemon/loop.hpp"
#include "daemon/mqtt/access.hpp"
#include "daemon/mqtt/safety_line.hpp"
#include "daemon/reporter.hpp"
#include "daemon/store/store.hpp"

namespace tidewright::commands {
namespace {

// With the broker's 0.4 s for OFF and the store's 1 s, a stop takes less than 2 s.
constexpr std::chrono::milliseconds goodbye{300};

std::string this_instance() {
  std::array<char, 256> host{};
  gethostname(host.data(), host.size() - 1);
  return fmt::format("{}/{}", host.data(), getpid());
}

mqtt::SafetySettings safety_settings(const config::Household& household,
                                     const mqtt::Access& access) {
  return {access, household.base, this_instance(), household.heartbeat,
          intake::Topics(household).subscriptions()};
}

int run_until_stopped(const RunOptions& options, const HouseholdFile& file,
                      const mqtt::Access& access) {
  const config::Household& household = *file.household;
  const store::Opened opened = store::Store::open(options.state_directory, household.room,
                                                  file.text, {.kept = household.journal_kept});
  if (!opened.store) {
    log::error(opened.refused);
    return EX_CANTCREAT;
  }
  store::Store& store = *opened.store;
  for (const std::string& remark : store.remarks()) log::warning(remark);

  const store::Found& found = store.found();
  const Clock clock(found.last, found.state.circumstances.wall, options.pace);
  Inbox inbox;
  mqtt::SafetyLine line(safety_settings(household, access));
  const auto panel = panel::Panel::open(household, options.state_directory);
  std::optional<alerts::Alerts> alerts;
  if (household.alerts.webhook || household.alerts.mail) {
    alerts.emplace(household, clock, options.state_directory, found.state,
                   alerts::courier_beside_us());
  }
  Reporter reporter(household, clock, access, inbox, options.state_directory, panel.get(),
                    alerts ? &*alerts : nullptr);
  Loop({household, clock, store, line, reporter}, inbox).run();

  reporter.close(goodbye);
  if (!store.close()) log::error("The disk did not take the last record.");
  const bool alone = line.close();
  log::info("Stopped.");
  log::close();
  // A helper thread that waits for a silent name server cannot be ended; its memory must stay.
  if (!alone) std::_Exit(EX_OK);
  return EX_OK;
}

}  // namespace

int run(const RunOptions& options) {
  // The decision thread has memory of its own, all others share: a quarter of a megabyte less.
  mallopt(M_ARENA_MAX, 2);
  log::open(options.json_log ? log::Format::json : log::Format::text);
  HouseholdFile file = read_household(options.config_file);
  if (!file.household) return file.exit_code;
  if (!options.broker.empty()) file.household->broker.uri = options.broker;
  const auto access = mqtt::access(file.household->broker);
  if (const auto* trouble = std::get_if<std::string>(&access)) {
    log::error(*trouble);
    return EX_CONFIG;
  }
  if (const std::string trouble = alerts::trouble(file.household->alerts); !trouble.empty()) {
    log::error(trouble);
    return EX_CONFIG;
  }
  block_stop_signals();
  std::signal(SIGPIPE, SIG_IGN);  // a connection that breaks is an error to read, not an end
  log::info(fmt::format("Tidewright looks after {}; broker {}.", file.household->room.id,
                        file.household->broker.uri));
  return run_until_stopped(options, file, std::get<mqtt::Access>(access));
}

std::function<int()> prepare_run(CLI::App& app) {
  auto options = std::make_shared<RunOptions>();
  app.add_option("--config", options->config_file, "The household's file")->required();
  app.add_option("--broker", options->broker, "mqtt://host:port or mqtts://host:port")
      ->envname("TIDEWRIGHT_BROKER");
  app.add_option("--state", options->state_directory, "Where the daemon keeps its records")
      ->envname("STATE_DIRECTORY")
      ->capture_default_str();
  app.add_option("--pace", options->pace, "The room's clock runs so many times faster")
      ->check(CLI::Range(1.0, 1000.0));
  app.add_option_function<std::string>(
         "--log-format",
         [options](const std::string& format) { options->json_log = format == "json"; },
         "text or json")
      ->check(CLI::IsMember({"text", "json"}));
  return [options] { return run(*options); };
}

}  // namespace tidewright::commands
