// Lives through incidents until there are many, and until each cell of the coverage table that can
// be reached at all (a fault, the phase in which it began, a trip input within two hours of it) was
// reached often enough. Keeps its counts in a file, so that it can be taken up again.
//   campaign COUNTS [INCIDENTS] [MINUTES]   at least so many (100000); stops after so long (none)
// Exit 1 on a violation; the shortest night that shows it is printed and written beside COUNTS.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "core/nights/draw.hpp"
#include "core/nights/run.hpp"
#include "core/nights/shrink.hpp"
#include "core/nights/text.hpp"
#include "core/rules/catalogue.hpp"
#include "tests/support/households.hpp"

namespace tidewright {
namespace {

using nights::Cell;
using nights::Night;

constexpr std::size_t often_enough = 30;
constexpr std::uint64_t saved_every = 1000;
constexpr std::uint64_t compared_every = 20;  // with the perfect keeper
// A cell that so many nights like its first one did not reach again is left as it is.
constexpr std::size_t tries_most = 400;

struct Count {
  std::size_t times = 0, tries = 0;
  // The first night that reached it: by which seed it was drawn, then by which it was varied.
  std::vector<std::uint64_t> first;
};

std::string text(const std::vector<std::uint64_t>& seeds) {
  return fmt::format("{}", fmt::join(seeds, "+"));
}

std::vector<std::uint64_t> seeds_of(const std::string& text) {
  std::vector<std::uint64_t> seeds;
  std::istringstream in(text);
  for (std::string seed; std::getline(in, seed, '+');) seeds.push_back(std::stoull(seed));
  return seeds;
}

struct Counts {
  std::uint64_t incidents = 0, violations = 0, steps = 0, wet = 0, trips = 0;
  double made = 0, possible = 0, core_seconds = 0;
  std::map<std::string, Count> cells;
};

std::string name(const Cell& cell) {
  constexpr std::array phases{"not_alive", "no_demand", "halted", "waiting", "filling"};
  return fmt::format("{} {} {}", cell.kind->name, phases[static_cast<std::size_t>(cell.phase)],
                     cell.finding < room::rule_count
                         ? rules::rule(static_cast<room::RuleId>(cell.finding)).name
                         : "nothing");
}

Counts load(const std::string& file) {
  Counts counts;
  std::ifstream in(file);
  in >> counts.incidents >> counts.violations >> counts.steps >> counts.wet >> counts.trips >>
      counts.made >> counts.possible >> counts.core_seconds;
  std::string fault, phase, finding, first;
  Count count;
  while (in >> fault >> phase >> finding >> count.times >> count.tries >> first) {
    count.first = seeds_of(first);
    counts.cells[fault + " " + phase + " " + finding] = count;
  }
  return counts;
}

void save(const Counts& counts, const std::string& file) {
  std::ofstream out(file + ".new");
  out << fmt::format("{} {} {} {} {} {} {} {}\n", counts.incidents, counts.violations, counts.steps,
                     counts.wet, counts.trips, counts.made, counts.possible, counts.core_seconds);
  for (const auto& [cell, count] : counts.cells) {
    out << fmt::format("{} {} {} {}\n", cell, count.times, count.tries, text(count.first));
  }
  out.close();
  std::rename((file + ".new").c_str(), file.c_str());
}

class Campaign {
 public:
  Campaign(std::string file, std::uint64_t incidents)
      : file_(std::move(file)), wanted_(incidents), counts_(load(file_)) {}

  bool is_done() const { return counts_.incidents >= wanted_ && rare() == counts_.cells.end(); }

  // The next seed, or, once there are many, a night like the first that reached a rare cell.
  void live_one() {
    const std::uint64_t seed = counts_.incidents++;
    const auto cell = rare();
    if (seed < wanted_ || cell == counts_.cells.end()) return live({seed});
    ++counts_.cells[cell->first].tries;
    std::vector<std::uint64_t> like = cell->second.first;
    like.push_back(seed);
    live(like);
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
      if (count.times < often_enough) fmt::print("  {} times only: {}\n", count.times, cell);
    }
  }
  bool found_nothing() const { return counts_.violations == 0; }

 private:
  using Cells = std::map<std::string, Count>;
  Cells::const_iterator rare() const {
    return std::find_if(counts_.cells.begin(), counts_.cells.end(), [](const auto& cell) {
      return cell.second.times < often_enough && cell.second.tries < tries_most;
    });
  }

  // The night that the first seed draws and the others vary.
  void live(const std::vector<std::uint64_t>& seeds) {
    const support::Household& household = households_[seeds[0] % households_.size()];
    Night night = nights::draw_incident(household.name, household.room, seeds[0]);
    for (std::size_t i = 1; i < seeds.size(); ++i) nights::vary(night, seeds[i]);
    const auto begin = std::clock();
    const nights::Outcome outcome = nights::Run(household.room, night).live();
    counts_.core_seconds += static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    counts_.steps += outcome.steps;
    counts_.wet += outcome.wet_spells;
    counts_.trips += outcome.trips;
    for (const Cell& cell : outcome.cells) {
      Count& count = counts_.cells[name(cell)];
      if (count.times++ == 0) count.first = seeds;
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
}  // namespace tidewright

int main(int count, char** words) {
  if (count < 2) {
    fmt::print(stderr, "campaign COUNTS [INCIDENTS] [MINUTES]\n");
    return 64;
  }
  const auto number = [&](int i, std::uint64_t otherwise) {
    return count > i ? std::strtoull(words[i], nullptr, 10) : otherwise;
  };
  return tidewright::run(words[1], number(2, 100'000), static_cast<long>(number(3, 0)));
}
