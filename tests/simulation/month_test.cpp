// A quiet month with everything at its default: a whole-percent gauge, TDS every 5 minutes, cold
// water, cheap electronics that lose a message now and then. The vat is kept, and nobody is
// disturbed, but for one word after four weeks: that the protections were never tried. Printed:
// litres made of the litres that a perfect keeper would have made.
#include <fmt/core.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "config/reader/reader.hpp"
#include "tests/support/keeper.hpp"
#include "tests/support/rooms.hpp"
#include "tests/support/seed.hpp"
#include "tests/support/theatre.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using support::curtain;
using support::Theatre;

constexpr Duration month = 24h * 30;

// 8 degrees; 8 L of top-off a day and 60 L for the weekly change.
rehearsal::Settings cold_month() {
  rehearsal::Settings settings;
  settings.weather = {Celsius{8}, Celsius{0}, Celsius{0.5}};
  settings.works.begins_filled = 0.6;
  settings.top_off_per_day = Litres{8};
  settings.weekly_change = Litres{60};
  return settings;
}

struct Month {
  Litres made, possible, lowest, highest, missed;
  std::size_t steps = 0;
  std::vector<std::string> announced;
  int told_to_try = 0;
};

Month play(const std::string& name, const room::Room& room, std::uint64_t seed,
           const support::Person& person = {}) {
  support::print_seed(seed);
  const rehearsal::Settings settings = cold_month();
  Theatre theatre(room, settings, seed);
  theatre.start(true);
  Month m;
  m.lowest = m.highest = theatre.pretend().works().vat().holding();
  while (theatre.now() < curtain + month) {
    theatre.play(theatre.now() + 10min);
    if (person) person(theatre);
    const Litres holding = theatre.pretend().works().vat().holding();
    m.lowest = std::min(m.lowest, holding);
    m.highest = std::max(m.highest, holding);
  }
  const rehearsal::Tally& tally = theatre.pretend().works().tally();
  m.made = tally.made;
  m.missed = tally.missed;
  m.possible = support::made_by_perfect_keeper(room, settings, seed, month);
  m.steps = theatre.steps;
  for (const report::Message& message : theatre.announced) {
    if (message.id == "proof_test_due") ++m.told_to_try;
    const bool of_it = message.id == "proof_test_due" || message.id == "digest";
    if (m.told_to_try == 1 && of_it) continue;
    m.announced.push_back(message.id + " " + message.event + ": " + message.text);
  }
  fmt::print("{}, seed {}: {:.0f} L made of {:.0f} L possible, vat {:.0f} to {:.0f} L, {} steps\n",
             name, seed, m.made.value, m.possible.value, m.lowest.value, m.highest.value, m.steps);
  return m;
}

room::Room household(const std::string& name) {
  std::ostringstream text;
  text << std::ifstream(TIDEWRIGHT_SOURCE_DIR "/config/" + name).rdbuf();
  const config::Understood understood = config::read(text.str());
  if (!understood.household) throw std::runtime_error(name + " is not understood");
  return understood.household->room;
}

void expect_quiet_and_kept(const Month& m) {
  EXPECT_THAT(m.announced, testing::IsEmpty());
  EXPECT_EQ(m.told_to_try, 1);
  EXPECT_EQ(m.missed.value, 0);  // the tank never went without
  EXPECT_GT(m.made / m.possible, 0.9);
}

// A battery sensor that speaks on change, with an availability topic.
room::Room with_leak_sensor_on_change(room::Room room) {
  const auto floor = room::find(room, room::Quantity::wetness, room::Place::floor);
  room.instruments[*floor].on_change = true;
  room.instruments[*floor].has_availability = true;
  room.instruments[*floor].reports_every = 25h;
  return room;
}

class QuietMonth : public testing::TestWithParam<std::uint64_t> {};

TEST_P(QuietMonth, Minimal) {
  const room::Room room = with_leak_sensor_on_change(household("minimal.toml"));
  const Month m = play("minimal.toml", room, GetParam());
  expect_quiet_and_kept(m);
  EXPECT_GT(m.lowest, Litres{70});    // START is 80 L; a change takes 60 L while the fill begins
  EXPECT_LT(m.highest, Litres{184});  // STOP is 180 L, and one step of the gauge is 2 L
}

// A person looks in every evening and starts the pump for four hours if the vat wants it.
TEST_P(QuietMonth, Rung1a) {
  const auto person = support::daily_person(4h);
  expect_quiet_and_kept(play("rung-1a.toml", household("rung-1a.toml"), GetParam(), person));
}

// Nothing is switched: the float valve alone keeps the vat, the daemon only watches.
TEST_P(QuietMonth, Rung1b) {
  const Month m = play("rung-1b.toml", household("rung-1b.toml"), GetParam());
  EXPECT_THAT(m.announced, testing::IsEmpty());
  EXPECT_EQ(m.missed.value, 0);
}

TEST_P(QuietMonth, Rung2) {
  expect_quiet_and_kept(play("rung-2.toml", household("rung-2.toml"), GetParam()));
}

TEST_P(QuietMonth, Rung3) {
  expect_quiet_and_kept(play("rung-3.toml", household("rung-3.toml"), GetParam()));
}

INSTANTIATE_TEST_SUITE_P(Seeds, QuietMonth, testing::ValuesIn(support::seeds({1, 2})));

TEST(FullMonth, WithEveryInstrument) {
  expect_quiet_and_kept(
      play("every instrument", support::full_room(), support::seeds({1}).front()));
}

TEST(FullMonth, WithTwinsAndWaterMeters) {
  expect_quiet_and_kept(
      play("twins and water meters", support::metered_room(), support::seeds({1}).front()));
}

}  // namespace
}  // namespace tidewright
