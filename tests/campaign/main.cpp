// Lives through incidents until there are many, and until each cell of the coverage table that can
// be reached at all (a fault, the phase in which it began, a trip input within two hours of it) was
// reached often enough. Keeps its counts in a file, so that it can be taken up again.
//   campaign COUNTS [INCIDENTS] [MINUTES]   at least so many (100000); stops after so long (none)
// Exit 1 on a violation; the shortest night that shows it is printed and written beside COUNTS.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <map>
#include <string>
#include <vector>

#include "core/nights/run.hpp"
#include "core/nights/shrink.hpp"
#include "core/nights/text.hpp"
#include "core/rules/catalogue.hpp"
#include "tests/campaign/counts.hpp"
#include "tests/support/households.hpp"

namespace tidewright::campaign {
namespace {

using nights::Night;

constexpr std::size_t often_enough = 30;
constexpr std::uint64_t saved_every = 1000;
constexpr std::uint64_t compared_every = 20;  // with the perfect keeper
// A cell that so many nights which sought it did not reach often enough is left as it is.
constexpr std::size_t tries_most = 400;

Cell words(const nights::Cell& cell) {
  constexpr std::array phases{"not_alive", "no_demand", "halted", "waiting", "filling"};
  return {std::string(cell.kind->name), phases[static_cast<std::size_t>(cell.phase)],
          std::string(cell.finding < room::rule_count
                          ? rules::rule(static_cast<room::RuleId>(cell.finding)).name
                          : "nothing")};
}

class Campaign {
 public:
  Campaign(std::string file, std::uint64_t incidents)
      : file_(std::move(file)), wanted_(incidents), counts_(load(file_)) {}

  bool is_done() const { return counts_.incidents >= wanted_ && rare() == counts_.cells.end(); }

  // The next seed, or, once there are many, a night that seeks a rare cell.
  void live_one() {
    const std::uint64_t seed = counts_.incidents++;
    const auto cell = rare();
    if (seed < wanted_ || cell == counts_.cells.end()) return live({Step{seed}});
    Count& count = counts_.cells[cell->first];
    const std::size_t tried = count.tries++;
    live(tried % 2 == 0 ? like_the_first(count, seed) : like_another(cell->first, tried / 2, seed));
  }

  void sum_up() const {
    save(counts_, file_);
    std::size_t full = 0;
    for (const auto& [cell, count] : counts_.cells) full += count.times >= often_enough ? 1 : 0;
    fmt::print(
        "{} incidents, {} violations, {} steps, {} times wet, {} trips\n"
        "{} cells reached, {} of them {} times and more\n"
        "{:.0f} L made of {:.0f} L possible, in every {}th\n{:.0f} incidents a core-second\n",
        counts_.incidents, counts_.violations, counts_.steps, counts_.wet, counts_.trips,
        counts_.cells.size(), full, often_enough, counts_.made, counts_.possible, compared_every,
        static_cast<double>(counts_.incidents) / counts_.core_seconds);
    for (const auto& [cell, count] : counts_.cells) {
      if (count.times >= often_enough) continue;
      fmt::print("  {} times only: {} {} {}\n", count.times, cell.fault, cell.phase, cell.finding);
    }
  }
  bool found_nothing() const { return counts_.violations == 0; }

 private:
  using Cells = std::map<Cell, Count>;
  Cells::const_iterator rare() const {
    return std::find_if(counts_.cells.begin(), counts_.cells.end(), [](const auto& cell) {
      return cell.second.times < often_enough && cell.second.tries < tries_most;
    });
  }

  static Recipe like_the_first(const Count& count, std::uint64_t seed) {
    Recipe recipe = count.first;
    recipe.push_back({seed});
    return recipe;
  }

  // A night in which the same was found in the same phase after another fault, joined by this one:
  // each of them in its turn.
  Recipe like_another(const Cell& cell, std::size_t turn, std::uint64_t seed) const {
    const nights::FaultKind* joins = nights::fault_kind_named(cell.fault);
    std::vector<Recipe> others;
    for (const auto& [other, count] : counts_.cells) {
      if (other.fault == cell.fault || other.phase != cell.phase) continue;
      if (other.finding != cell.finding) continue;
      const room::Room& room = household_of(count.first, households_).room;
      if (nights::subjects(*joins, room).empty()) continue;
      others.push_back(count.first);
      others.back().push_back({seed, joins, nights::fault_kind_named(other.fault)});
    }
    return others.empty() ? like_the_first(counts_.cells.at(cell), seed)
                          : others[turn % others.size()];
  }

  void live(const Recipe& recipe) {
    const support::Household& household = household_of(recipe, households_);
    const Night night = night_of(recipe, household);
    const auto begin = std::clock();
    const nights::Outcome outcome = nights::Run(household.room, night).live();
    counts_.core_seconds += static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    counts_.steps += outcome.steps;
    counts_.wet += outcome.wet_spells;
    counts_.trips += outcome.trips;
    for (const nights::Cell& cell : outcome.cells) {
      Count& count = counts_.cells[words(cell)];
      if (count.times++ == 0) count.first = recipe;
    }
    if (counts_.incidents % compared_every == 0) {
      counts_.made += outcome.made.value;
      counts_.possible +=
          nights::Run(household.room, night, nights::Keeper::perfect).live().made.value;
    }
    for (const nights::Violation& violation : outcome.violations)
      report(household, night, violation);
    if (counts_.incidents % saved_every == 0) save(counts_, file_);
  }

  void report(const support::Household& household, const Night& night,
              const nights::Violation& violation) {
    const Night shortest = nights::shrink(household.room, night, violation.name);
    const std::string text = nights::print(shortest, household.room);
    fmt::print("VIOLATED: {} {}: {}\n{}\n", violation.number, violation.name, violation.text, text);
    std::ofstream(fmt::format("{}.{}.{}.night", file_, violation.name, counts_.violations)) << text;
    ++counts_.violations;
  }

  const std::string file_;
  const std::uint64_t wanted_;
  const std::vector<support::Household> households_ = support::households();
  Counts counts_;
};

int run(const std::string& file, std::uint64_t incidents, long minutes) {
  using Clock = std::chrono::steady_clock;
  const auto end = Clock::now() + std::chrono::minutes{minutes};
  Campaign campaign(file, incidents);
  while (!campaign.is_done() && (minutes == 0 || Clock::now() < end)) campaign.live_one();
  campaign.sum_up();
  return campaign.found_nothing() ? 0 : 1;
}

}  // namespace
}  // namespace tidewright::campaign

int main(int count, char** words) {
  if (count < 2) {
    fmt::print(stderr, "campaign COUNTS [INCIDENTS] [MINUTES]\n");
    return 64;
  }
  const auto number = [&](int i, std::uint64_t otherwise) {
    return count > i ? std::strtoull(words[i], nullptr, 10) : otherwise;
  };
  return tidewright::campaign::run(words[1], number(2, 100'000), static_cast<long>(number(3, 0)));
}
