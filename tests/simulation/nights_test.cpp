// Bad nights: seeded incidents of six to eight hours and whole days over every household of
// config/, with every invariant asked after each step. A night that violates one is shrunk and
// printed as text; keep that text as tests/simulation/nights/NAME.night.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/nights/draw.hpp"
#include "core/nights/run.hpp"
#include "core/nights/shrink.hpp"
#include "core/nights/text.hpp"
#include "tests/support/households.hpp"
#include "tests/support/seed.hpp"

namespace tidewright {
namespace {

using nights::Night;
using nights::Outcome;
using support::Household;

constexpr std::uint64_t incidents_in_a_part = 125;
constexpr std::uint64_t days_in_a_part = 6;

using Draw = Night (*)(const std::string&, const room::Room&, std::uint64_t);

void expect_no_violation(const Household& household, const Night& night, const Outcome& outcome) {
  for (const nights::Violation& violation : outcome.violations) {
    const Night shortest = nights::shrink(household.room, night, violation.name);
    ADD_FAILURE() << "invariant " << violation.number << " (" << violation.name << ") at "
                  << seconds(violation.at) << " s of seed " << night.seed << ": " << violation.text
                  << "\n"
                  << nights::print(shortest, household.room);
  }
}

// `count` nights from that seed on, each in the next household.
void live_through(Draw draw, std::uint64_t first, std::uint64_t count) {
  const auto households = support::households();
  Litres made;
  std::size_t steps = 0, wet = 0;
  const auto begin = std::clock();
  for (std::uint64_t seed = first; seed < first + count; ++seed) {
    const Household& household = households[seed % households.size()];
    const Night night = draw(household.name, household.room, seed);
    if (count == 1) fmt::print("{}", nights::print(night, household.room));
    const Outcome outcome = nights::Run(household.room, night).live();
    expect_no_violation(household, night, outcome);
    made += outcome.made;
    steps += outcome.steps;
    wet += outcome.wet_spells;
  }
  const double core_seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  fmt::print("{} nights, {} steps, {} times wet, {:.0f} L made; {:.0f} nights a core-second\n",
             count, steps, wet, made.value, static_cast<double>(count) / core_seconds);
}

// One seed again, by TIDEWRIGHT_SEED, or the whole part.
void live_part(Draw draw, std::uint64_t part, std::uint64_t count) {
  const std::uint64_t first = part * count;
  const std::uint64_t seed = support::seeds({first}).front();
  support::print_seed(seed);
  live_through(draw, seed, seed == first ? count : 1);
}

class BadNights : public testing::TestWithParam<std::uint64_t> {};

TEST_P(BadNights, Incidents) { live_part(nights::draw_incident, GetParam(), incidents_in_a_part); }

INSTANTIATE_TEST_SUITE_P(Parts, BadNights, testing::Range<std::uint64_t>(0, 8));

class BadDays : public testing::TestWithParam<std::uint64_t> {};

TEST_P(BadDays, WholeDays) { live_part(nights::draw_day, GetParam(), days_in_a_part); }

INSTANTIATE_TEST_SUITE_P(Parts, BadDays, testing::Range<std::uint64_t>(0, 5));

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
