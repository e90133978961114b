// The water balance against chance, through the whole step: how soon a leak and a stuck float are
// found on a vat of 0.5 m2 whose gauge scatters by 1 mm and speaks once a minute, and how often
// nothing at all is called a leak. The issue's own figures are the bounds. Every draw has a seed of
// its own, printed with the first, so that a run is the same for ever; the numbers of draws are
// such that a household a tenth as good as asked would fail.
//   TIDEWRIGHT_DRAWS, TIDEWRIGHT_YEARS   more of them (tests/long.sh balance)
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <vector>

#include "core/rehearsal/chance.hpp"
#include "core/step.hpp"
#include "tests/support/rooms.hpp"
#include "tests/support/seed.hpp"

namespace tidewright {
namespace {

using namespace std::chrono_literals;
using room::RuleId;
using support::Minimal;

int from_environment(const char* name, int usual) {
  const char* text = std::getenv(name);
  return text != nullptr ? std::max(1, std::atoi(text)) : usual;
}

// A gauge as cheap as they come.
struct Gauge {
  const char* words;
  double step_l;
  double noise_l;
};
constexpr Gauge fine{"1 mm of noise", 0.5, 0.5};
constexpr Gauge whole_percent{"whole percents", 2, 0.4};

// How the tank takes its top-off.
struct TopOff {
  const char* words;
  double steady_l_h;
  double pulses_an_hour;
  double pulse_l;
  bool at_random;  // else every so often, give or take a fifth
};
constexpr TopOff none{"no top-off", 0, 0, 0, false};

// A 200 L vat of 0.5 m2 (1 mm is 0.5 L) that the test fills and empties by itself.
class Household {
 public:
  Household(const Gauge& gauge, const TopOff& top_off, std::uint64_t seed, double holds)
      : level_(holds), gauge_(gauge), top_off_(top_off), chance_(seed) {
    const auto all = support::minimal_room().instruments;
    room_ = support::minimal_room();
    room_.instruments = {all[Minimal::floor], all[Minimal::level], all[Minimal::feedback]};
    room_.instruments[1].step = gauge.step_l;
    happen(Started{.clean = true});
    happen(Link{.up = true});
    happen(Reading{.instrument = 2, .value = 0});
    next_pulse_h_ = top_off.pulses_an_hour > 0 ? chance_.uniform() / top_off.pulses_an_hour : 1e9;
  }

  void pass_a_minute() {
    now_ += 1min;
    const double hour = static_cast<double>(++minutes_) / 60;
    if (runs() && !float_closed) level_ += flow_l_h / 60;
    level_ -= (leak_l_h + drift_l_h + top_off_.steady_l_h) / 60;
    if (hour >= next_pulse_h_) {
      level_ -= top_off_.pulse_l;
      const double gap =
          top_off_.at_random ? -std::log(1 - chance_.uniform()) : 0.8 + 0.4 * chance_.uniform();
      next_pulse_h_ = hour + gap / top_off_.pulses_an_hour;
    }
    happen(Reading{.instrument = 0, .value = 0});
    const double reading = level_ + gauge_.noise_l * chance_.normal();
    happen(Reading{.instrument = 1, .value = gauge_.step_l * std::round(reading / gauge_.step_l)});
  }
  void pass(Duration lasting) {
    for (Duration passed{0}; passed < lasting; passed += 1min) pass_a_minute();
  }
  // Hours until the alarm comes, or none within `longest`.
  double hours_until(RuleId alarm, Duration longest) {
    for (Duration passed{0}; passed < longest; passed += 1min) {
      pass_a_minute();
      if (finds(alarm)) return hours(passed + 1min);
    }
    return INFINITY;
  }
  bool finds(RuleId alarm) const { return state.findings[alarm].active; }
  bool runs() const { return state.drives[0].on; }
  // Somebody keeps the vat about full, unseen: a year's top-off is more than it holds.
  void keep_over(double litres) {
    if (level_ < litres) level_ += 60;
  }

  State state;
  double leak_l_h = 0;
  double drift_l_h = 0;  // of the gauge, downwards
  double flow_l_h = 8;
  bool float_closed = false;

 private:
  void happen(const decltype(Event::what)& what) {
    step(room_, state, {now_, what}, effects_);
    const Effects done = effects_;
    for (const Effect& effect : done) {
      const auto* command = std::get_if<Command>(&effect);
      if (command != nullptr) {
        happen(Reading{.instrument = 2, .value = command->on ? 1.0 : 0.0});
      }
    }
  }

  room::Room room_;
  Effects effects_;
  Instant now_{24h * 20'000};
  long minutes_ = 0;
  double level_;
  Gauge gauge_;
  TopOff top_off_;
  rehearsal::Chance chance_;
  double next_pulse_h_ = 0;
};

struct Times {
  std::vector<double> hours;  // in order
  double at(double share) const {
    return hours[static_cast<std::size_t>(share * static_cast<double>(hours.size() - 1))];
  }
  long later_than(double limit) const {
    return std::count_if(hours.begin(), hours.end(), [&](double h) { return h > limit; });
  }
  void print(const std::string& what) const {
    fmt::print("{:<58} median {:.2f} h, 95 % {:.2f} h, longest {:.2f} h, {} draws\n", what, at(0.5),
               at(0.95), hours.back(), hours.size());
  }
};

template <class Life>
Times times(int draws, std::uint64_t seed, Life life) {
  support::print_seed(seed);
  Times times;
  for (int i = 0; i < draws; ++i) {
    times.hours.push_back(life(seed * 1'000'000 + static_cast<std::uint64_t>(i)));
  }
  std::sort(times.hours.begin(), times.hours.end());
  return times;
}

// A leak that begins at any time after two days of standing.
Times leaks(const Gauge& gauge, const TopOff& top_off, double l_h, double drift_l_h, int draws,
            std::uint64_t seed) {
  const Times found = times(draws, seed, [&](std::uint64_t one) {
    Household home(gauge, top_off, one, 170);
    home.drift_l_h = drift_l_h;
    home.pass(48h + (one % 60) * 7min);
    home.leak_l_h = l_h;
    return home.finds(RuleId::water_balance_off) ? 0.0
                                                 : home.hours_until(RuleId::water_balance_off, 24h);
  });
  found.print(
      fmt::format("{} L/h, drift {} L/h, {}, {}", l_h, drift_l_h, gauge.words, top_off.words));
  return found;
}

// A float valve that sticks closed at any time after an hour of filling; the purifier is known.
Times stuck_floats(const Gauge& gauge, int draws, std::uint64_t seed) {
  const Times found = times(draws, seed, [&](std::uint64_t one) {
    Household home(gauge, none, one, 60);
    home.state.ledger.learned = {.fills = 3, .share = 8 / (280.0 / 24 * 0.584)};  // 10 degrees
    home.pass(2h + (one % 60) * 1min);
    EXPECT_TRUE(home.runs());
    EXPECT_FALSE(home.finds(RuleId::water_balance_off));
    home.float_closed = true;
    for (int minute = 1; minute <= 240; ++minute) {
      home.pass_a_minute();
      if (home.finds(RuleId::water_balance_off) || home.finds(RuleId::level_flat_while_filling)) {
        return minute / 60.0;
      }
    }
    return static_cast<double>(INFINITY);
  });
  found.print(fmt::format("stuck float, 8 L/h, {}", gauge.words));
  return found;
}

// A vat that stands, with nothing but its top-off, for so many years.
int false_leaks(const Gauge& gauge, const TopOff& top_off, double drift_l_h, int years,
                std::uint64_t seed) {
  support::print_seed(seed);
  int alarms = 0;
  for (int year = 0; year < years; ++year) {
    Household home(gauge, top_off, seed * 1'000 + static_cast<std::uint64_t>(year), 170);
    home.drift_l_h = drift_l_h;
    bool stood = false;
    for (long minute = 0; minute < 365L * 24 * 60; ++minute) {
      home.pass_a_minute();
      home.keep_over(100);
      const bool stands = home.finds(RuleId::water_balance_off);
      if (stands && !stood) ++alarms;
      stood = stands;
    }
  }
  fmt::print("{:<58} {} false alarms in {} years\n",
             fmt::format("{}, {}, drift {} L/h", gauge.words, top_off.words, drift_l_h), alarms,
             years);
  return alarms;
}

int draws() { return from_environment("TIDEWRIGHT_DRAWS", 30); }
int years() { return from_environment("TIDEWRIGHT_YEARS", 1); }

class Balance : public testing::TestWithParam<std::uint64_t> {};

// Found within 4 h, says the issue. One in a hundred may be late by the noise; that more than one
// in ten of thirty are has then a chance of 3 in 10,000 (binomial).
TEST_P(Balance, ALeakOf1LitreAnHourIsFoundWithin4Hours) {
  EXPECT_LE(leaks(fine, none, 1, 0, draws(), GetParam()).later_than(4), draws() / 10);
}

TEST_P(Balance, ALeakOf3LitresAnHourIsFoundWithin4HoursThroughDrift) {
  EXPECT_LE(leaks(fine, none, 3, -0.5, draws(), GetParam()).later_than(4), draws() / 10);
  EXPECT_LE(leaks(fine, none, 3, 0.5, draws(), GetParam()).later_than(4), draws() / 10);
}

TEST_P(Balance, AStuckFloatIsFoundWithin30Minutes) {
  EXPECT_LE(stuck_floats(fine, draws(), GetParam()).later_than(0.5), draws() / 10);
}

// At most one a year.
TEST_P(Balance, AYearOfStandingIsNoLeak) {
  EXPECT_LE(false_leaks(fine, {"0.5 L every 90 min", 0, 0.67, 0.5, false}, 0, years(), GetParam()),
            years());
}

INSTANTIATE_TEST_SUITE_P(Seeds, Balance, testing::ValuesIn(support::seeds({1})));

// The table of the long tier: what the issue asks for and what it does not. Without
// TIDEWRIGHT_YEARS two draws of each, so that the table itself is kept alive.
TEST(BalanceTable, ForOtherGaugesAndHabits) {
  const bool is_long = std::getenv("TIDEWRIGHT_YEARS") != nullptr;
  const int draws_each = is_long ? draws() : 2;
  const int years_each = is_long ? years() : 0;
  const TopOff habits[] = {none,
                           {"8 L a day, steadily", 0.33, 0, 0, false},
                           {"0.5 L every 90 min", 0, 0.67, 0.5, false},
                           {"1 L every 3 h", 0, 0.33, 1, false},
                           {"2 L every 5 h", 0, 0.2, 2, false},
                           {"0.5 L at random, 8 L a day", 0, 0.67, 0.5, true},
                           {"2 L at random, 10 L a day", 0, 0.2, 2, true},
                           {"15 L at random, every 20 h", 0, 0.05, 15, true}};
  for (const std::uint64_t seed : support::seeds({1, 2, 3})) {
    for (const Gauge& gauge : {fine, whole_percent}) {
      stuck_floats(gauge, draws_each, seed);
      EXPECT_EQ(leaks(gauge, none, 3, -0.5, draws_each, seed).later_than(24), 0);
      leaks(gauge, none, 3, 0.5, draws_each, seed);
      false_leaks(gauge, none, 0.5, years_each, seed);
      for (const TopOff& habit : habits) {
        leaks(gauge, habit, 1, 0, draws_each, seed);
        false_leaks(gauge, habit, 0, years_each, seed);
      }
    }
  }
}

}  // namespace
}  // namespace tidewright
