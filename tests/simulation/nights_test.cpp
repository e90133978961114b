// Bad nights: seeded incidents of six to eight hours and whole days over every household of
// config/, with every invariant asked after each step. A night that violates one is shrunk and
// printed as text; keep that text as tests/simulation/nights/NAME.night.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "core/nights/draw.hpp"
#include "core/nights/run.hpp"
#include "core/nights/shrink.hpp"
#include "core/nights/text.hpp"
#include "core/nights/worst.hpp"
#include "daemon/store/names.hpp"
#include "tests/support/households.hpp"
#include "tests/support/seed.hpp"

namespace tidewright {
namespace {

using nights::Night;
using nights::Outcome;
using support::Household;

constexpr std::uint64_t incidents_in_a_part = 125;
constexpr std::uint64_t days_in_a_part = 6;
constexpr std::uint64_t recoveries_in_a_part = 25;
// Also lived through by the perfect keeper, who costs as much.
constexpr std::uint64_t one_in_so_many_is_compared = 4;

using Draw = Night (*)(const std::string&, const room::Room&, std::uint64_t);

void expect_no_violation(const Household& household, const Night& night, const Outcome& outcome) {
  for (const nights::Violation& violation : outcome.violations) {
    fmt::print("VIOLATED by seed {}: {} at {:.0f} s: {}\n", night.seed, violation.name,
               seconds(violation.at), violation.text);
    std::fflush(stdout);
    const Night shortest = nights::shrink(household.room, night, violation.name);
    ADD_FAILURE() << "invariant " << violation.number << " (" << violation.name << ") at "
                  << seconds(violation.at) << " s of seed " << night.seed << ": " << violation.text
                  << "\n"
                  << nights::print(shortest, household.room);
  }
}

// What the nights of one household came to.
struct Sum {
  std::size_t nights = 0, wet = 0, filled = 0, announced = 0;
  Litres made, possible, spilled;
  std::map<Why, Duration> held;
  Duration dead{0};
};

void add(Sum& sum, const Household& household, const Night& night, const Outcome& outcome) {
  ++sum.nights;
  sum.wet += outcome.wet_spells;
  sum.announced += outcome.announced;
  sum.filled += outcome.filled_when_calm ? 1 : 0;
  sum.spilled += outcome.spilled;
  if (night.seed % one_in_so_many_is_compared != 0) return;
  sum.made += outcome.made;
  sum.possible += nights::Run(household.room, night, nights::Keeper::perfect).live().made;
  for (const auto& [why, lasted] : outcome.held) sum.held[why] += lasted;
  sum.dead += outcome.dead;
}

// Beside each safety figure the litres; and what kept the rest from being made.
void print(const std::string& name, const Sum& sum) {
  fmt::print(
      "{}: {} nights, {} times wet, {:.0f} L on the floor, {} alarms, {} full when calm, "
      "{:.0f} L made of {:.0f} L\n",
      name, sum.nights, sum.wet, sum.spilled.value, sum.announced, sum.filled, sum.made.value,
      sum.possible.value);
  std::vector<std::pair<Duration, std::string>> most{{sum.dead, "the daemon did not live"}};
  for (const auto& [why, lasted] : sum.held) most.emplace_back(lasted, store::name(why));
  std::sort(most.rbegin(), most.rend());
  most.resize(std::min<std::size_t>(most.size(), 6));
  for (const auto& [lasted, why] : most) fmt::print("  {:.1f} h {}\n", hours(lasted), why);
}

// `count` nights from that seed on, each in the next household.
void live_through(Draw draw, const std::vector<Household>& households, std::uint64_t first,
                  std::uint64_t count) {
  std::map<std::string, Sum> sums;
  std::size_t steps = 0;
  std::clock_t spent = 0;
  for (std::uint64_t seed = first; seed < first + count; ++seed) {
    const Household& household = households[seed % households.size()];
    const Night night = draw(household.name, household.room, seed);
    if (count == 1) fmt::print("{}", nights::print(night, household.room));
    const auto begin = std::clock();
    const Outcome outcome = nights::Run(household.room, night).live();
    spent += std::clock() - begin;
    steps += outcome.steps;
    expect_no_violation(household, night, outcome);
    add(sums[household.name], household, night, outcome);
  }
  for (const auto& [name, sum] : sums) print(name, sum);
  const double core_seconds = static_cast<double>(spent) / CLOCKS_PER_SEC;
  fmt::print("{} nights, {} steps; {:.0f} nights a core-second\n", count, steps,
             static_cast<double>(count) / core_seconds);
}

// One seed again, by TIDEWRIGHT_SEED, or the whole part.
void live_part(Draw draw, const std::vector<Household>& households, std::uint64_t part,
               std::uint64_t count) {
  const std::uint64_t first = part * count;
  const std::uint64_t seed = support::seeds({first}).front();
  support::print_seed(seed);
  live_through(draw, households, seed, seed == first ? count : 1);
}

class BadNights : public testing::TestWithParam<std::uint64_t> {};

TEST_P(BadNights, Incidents) {
  live_part(nights::draw_incident, support::households(), GetParam(), incidents_in_a_part);
}

INSTANTIATE_TEST_SUITE_P(Parts, BadNights, testing::Range<std::uint64_t>(0, 8));

class BadDays : public testing::TestWithParam<std::uint64_t> {};

TEST_P(BadDays, WholeDays) {
  live_part(nights::draw_day, support::households(), GetParam(), days_in_a_part);
}

INSTANTIATE_TEST_SUITE_P(Parts, BadDays, testing::Range<std::uint64_t>(0, 5));

class Recovery : public testing::TestWithParam<std::uint64_t> {};

// Water is made again, in every room that fills to a mark by itself.
TEST_P(Recovery, FillsAgain) {
  std::vector<Household> filling;
  for (const Household& household : support::households()) {
    if (room::fills_to_a_mark(household.room)) filling.push_back(household);
  }
  live_part(nights::draw_recovery, filling, GetParam(), recoveries_in_a_part);
}

INSTANTIATE_TEST_SUITE_P(Parts, Recovery, testing::Range<std::uint64_t>(0, 3));

// The table that `rehearse` prints: no night is worse than the household's own keys say.
TEST(WetToOff, IsNeverWorseThanByTheFile) {
  for (const Household& household : support::households()) {
    for (const nights::Worst& row : nights::worst_seen(household.name, household.room, 1, 12)) {
      const std::string_view under = row.kind ? row.kind->name : "nothing";
      fmt::print("{} under {}: {:.0f} s seen, {:.0f} s by the file\n", household.name, under,
                 seconds(row.seen), row.computed ? seconds(*row.computed) : -1.0);
      if (row.computed) {
        EXPECT_LE(row.seen, *row.computed) << household.name << " " << under;
      }
    }
  }
}

// Every night that ever failed is lived through again.
TEST(KeptNights, ViolateNothing) {
  const auto households = support::households();
  for (const auto& entry :
       std::filesystem::directory_iterator(TIDEWRIGHT_SOURCE_DIR "/tests/simulation/nights")) {
    SCOPED_TRACE(entry.path().filename().string());
    std::ostringstream text;
    text << std::ifstream(entry.path()).rdbuf();
    const Household& household =
        support::household_named(households, nights::household_of(text.str()));
    const auto parsed = nights::parse(text.str(), household.room);
    const auto* night = std::get_if<Night>(&parsed);
    ASSERT_NE(night, nullptr) << std::get<std::string>(parsed);
    expect_no_violation(household, *night, nights::Run(household.room, *night).live());
  }
}

TEST(NightText, ComesBackAsItWas) {
  const auto households = support::households();
  for (std::uint64_t seed = 0; seed < 200; ++seed) {
    const Household& household = households[seed % households.size()];
    const std::string text =
        nights::print(nights::draw_day(household.name, household.room, seed), household.room);
    EXPECT_EQ(nights::household_of(text), household.name);
    const auto parsed = nights::parse(text, household.room);
    const auto* night = std::get_if<Night>(&parsed);
    ASSERT_NE(night, nullptr) << std::get<std::string>(parsed);
    EXPECT_EQ(nights::print(*night, household.room), text);
  }
}

}  // namespace
}  // namespace tidewright
