#include "daemon/commands/rehearse.hpp"

#include <fmt/format.h>
#include <sysexits.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>

#include "core/nights/draw.hpp"
#include "core/nights/run.hpp"
#include "core/nights/shrink.hpp"
#include "core/nights/text.hpp"
#include "core/nights/worst.hpp"
#include "daemon/commands/household_file.hpp"

namespace tidewright::commands {
namespace {

using nlohmann::ordered_json;

constexpr std::size_t nights_for_each_fault = 20;

// One day and what came of it.
struct Day {
  nights::Night night;
  nights::Outcome outcome;
  Litres possible;
};

Day live_one(const std::string& name, const room::Room& room, std::uint64_t seed) {
  Day day{.night = nights::draw_day(name, room, seed), .outcome = {}, .possible = {}};
  day.outcome = nights::Run(room, day.night).live();
  day.possible = nights::Run(room, day.night, nights::Keeper::perfect).live().made;
  return day;
}

// The lines of the night's text that say what befell.
std::string injected(const nights::Night& night, const room::Room& room) {
  const std::string text = nights::print(night, room);
  const std::size_t first = text.find("\nat ");
  return first == text.npos ? "" : text.substr(first + 1);
}

std::string words(const Day& day, const room::Room& room) {
  std::string text = fmt::format("seed {}: {:.0f} L made of {:.0f} L, {} alarms, {} trips\n",
                                 day.night.seed, day.outcome.made.value, day.possible.value,
                                 day.outcome.announced, day.outcome.trips);
  text += injected(day.night, room);
  for (const nights::Violation& violation : day.outcome.violations) {
    text += fmt::format("VIOLATED: {} ({}): {}\nThe shortest night that shows it:\n{}",
                        violation.number, violation.name, violation.text,
                        nights::print(nights::shrink(room, day.night, violation.name), room));
  }
  return text + "\n";
}

std::string words(const std::vector<nights::Worst>& table) {
  if (table.empty()) {
    return "Nothing is switched here, or nothing sees water: there is no time from wet to OFF.\n";
  }
  std::string text = fmt::format(
      "The worst time from water on the floor to OFF, by the file and as seen in {} nights each:\n"
      "{:<24}{:>12}{:>12}\n",
      table.front().nights, "under this single fault", "by the file", "seen");
  for (const nights::Worst& row : table) {
    const std::string computed =
        row.computed ? fmt::format("{:.0f} s", seconds(*row.computed)) : "no limit";
    text += fmt::format("{:<24}{:>12}{:>10.0f} s\n", row.kind ? row.kind->name : "none", computed,
                        seconds(row.seen));
  }
  return text +
         "\"no limit\": a relay that is welded, or a sensor that says \"dry\" of a wet floor where "
         "no other sensor is. Have one barrier against water that works with the daemon off.\n";
}

ordered_json json(const Day& day, const room::Room& room) {
  ordered_json document{{"seed", day.night.seed},
                        {"night", nights::print(day.night, room)},
                        {"made_l", day.outcome.made.value},
                        {"possible_l", day.possible.value},
                        {"alarms", day.outcome.announced},
                        {"trips", day.outcome.trips},
                        {"violations", ordered_json::array()}};
  for (const nights::Violation& violation : day.outcome.violations) {
    document["violations"].push_back({{"invariant", violation.number},
                                      {"name", violation.name},
                                      {"at_s", seconds(violation.at)},
                                      {"what", violation.text}});
  }
  return document;
}

ordered_json json(const std::vector<nights::Worst>& table) {
  ordered_json rows = ordered_json::array();
  for (const nights::Worst& row : table) {
    ordered_json computed;
    if (row.computed) computed = seconds(*row.computed);
    rows.push_back({{"fault", row.kind ? row.kind->name : "none"},
                    {"by_the_file_s", computed},
                    {"seen_s", seconds(row.seen)}});
  }
  return rows;
}

}  // namespace

int rehearse(const Rehearse& wanted, std::ostream& out) {
  const HouseholdFile read = read_household(wanted.config);
  if (!read.household) return read.exit_code;
  const room::Room& room = read.household->room;
  const std::string name = std::filesystem::path(wanted.config).filename();
  ordered_json document{{"household", name}, {"days", ordered_json::array()}};
  std::size_t violations = 0;
  Litres made, possible;
  for (std::uint64_t seed = wanted.seed; seed < wanted.seed + wanted.days; ++seed) {
    const Day day = live_one(name, room, seed);
    violations += day.outcome.violations.size();
    made += day.outcome.made;
    possible += day.possible;
    if (wanted.json) document["days"].push_back(json(day, room));
    if (!wanted.json) out << words(day, room);
  }
  const auto table = nights::worst_seen(name, room, wanted.seed, nights_for_each_fault);
  if (wanted.json) {
    document["wet_to_off"] = json(table);
    out << document.dump(2) << '\n';
  } else {
    out << words(table)
        << fmt::format("\n{} days, {} violations, {:.0f} L made of {:.0f} L possible\n",
                       wanted.days, violations, made.value, possible.value);
  }
  return violations == 0 ? 0 : EX_SOFTWARE;
}

std::function<int()> prepare_rehearse(CLI::App& app) {
  const auto wanted = std::make_shared<Rehearse>();
  app.add_option("--config", wanted->config, "the household's file")->required();
  app.add_option("--seed", wanted->seed, "the first day's seed; each day has the next (1)");
  app.add_option("--days", wanted->days, "how many bad days to live through (30)");
  app.add_flag("--json", wanted->json, "for programs");
  return [wanted] { return rehearse(*wanted, std::cout); };
}

}  // namespace tidewright::commands
