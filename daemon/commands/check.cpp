#include "daemon/commands/check.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <nlohmann/json.hpp>

#include "config/protection.hpp"
#include "daemon/commands/household_file.hpp"

namespace tidewright::commands {
namespace {

using nlohmann::ordered_json;

ordered_json cases_json(const std::vector<config::Case>& cases) {
  ordered_json list = ordered_json::array();
  for (const auto& [happening, outcome] : cases) {
    list.push_back({{"if", happening}, {"then", outcome}});
  }
  return list;
}

ordered_json json(const config::Protection& protection) {
  ordered_json document{{"protected", cases_json(protection.had)},
                        {"not_protected", cases_json(protection.not_had)}};
  document["at_stake"] = ordered_json::array();
  for (const config::Stake& stake : protection.at_stake) {
    document["at_stake"].push_back({{"if", stake.happening},
                                    {"at_most_s", seconds(stake.lasting)},
                                    {"at_most_l", stake.litres.value}});
  }
  document["marks"] = ordered_json::array();
  for (const config::Rise& rise : protection.rises) {
    document["marks"].push_back({{"from", rise.from.name},
                                 {"from_l", rise.from.at.value},
                                 {"to", rise.to.name},
                                 {"to_l", rise.to.at.value},
                                 {"at_rated_flow_s", seconds(rise.at_rated_flow)}});
  }
  document["alarms"] = protection.alarms;
  document["alarms_not_possible"] = protection.alarms_not;
  return document;
}

}  // namespace

int check(const std::string& file, bool as_json) {
  const HouseholdFile read = read_household(file);
  if (!read.household) return read.exit_code;
  const config::Protection protection = config::protection(*read.household);
  fmt::print(
      "{}", as_json ? json(protection).dump(2) + "\n" : config::words(protection, *read.household));
  return 0;
}

std::function<int()> prepare_check(CLI::App& app) {
  struct Options {
    std::string file;
    bool json = false;
  };
  const auto options = std::make_shared<Options>();
  app.add_option("FILE", options->file, "the household's file")->required();
  app.add_flag("--json", options->json, "for programs");
  return [options] { return check(options->file, options->json); };
}

}  // namespace tidewright::commands
