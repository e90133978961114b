#include "daemon/commands/check.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "config/protection.hpp"
#include "config/reader/reader.hpp"

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
  std::ifstream stream{file};
  if (!stream) {
    fmt::print(stderr, "{}: error: the file cannot be read\n", file);
    return 66;
  }
  const std::string text{std::istreambuf_iterator<char>{stream}, {}};
  const config::Understood understood = config::read(text);
  for (const config::Problem& problem : understood.problems) {
    fmt::print(stderr, "{}", config::render(problem, file, text));
  }
  if (!understood.household) return 78;
  const config::Protection protection = config::protection(*understood.household);
  fmt::print("{}", as_json ? json(protection).dump(2) + "\n"
                           : config::words(protection, *understood.household));
  return 0;
}

}  // namespace tidewright::commands
