// The water balance against chance, through the whole step: how soon a leak and a stuck float are
// found on a vat of 0.5 m2 whose gauge scatters by 1 mm and speaks once a minute, and how often a
// household's quiet year is called a leak. The issue's own figures are the bounds. Every draw has a
// seed of its own, printed with the first, so that a run is the same for ever.
//   TIDEWRIGHT_DRAWS, TIDEWRIGHT_YEARS   more of them (tests/long.sh balance)
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <initializer_list>
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

struct Gauge {
  const char* words;
  double step_l;
  double noise_l;
};
constexpr Gauge fine{"1 mm of noise", 0.5, 0.5};
constexpr Gauge whole_percent{"whole percents", 2, 0.4};

// Water that leaves the vat by habit.
struct Habit {
  const char* words;
  double steady_l_h;
  double times_an_hour;
  double litres;
  bool at_random;  // else every so often, give or take a fifth
};
constexpr Habit none{"nothing", 0, 0, 0, false};
constexpr Habit steady{"8 L a day, steadily", 0.33, 0, 0, false};
constexpr Habit pulses{"0.5 L every 90 min", 0, 0.67, 0.5, false};
constexpr Habit by_hand{"2 L by hand at random, 10 L a day", 0, 0.2, 2, true};

// A 200 L vat of 0.5 m2 (1 mm is 0.5 L) with START at 80 L and STOP at 180 L.
class Household {
 public:
  Household(const Gauge& gauge, const Habit& habit, std::uint64_t seed, double holds)
      : level_(holds), gauge_(gauge), habit_(habit), chance_(seed) {
    room_ = support::minimal_room();
    const auto all = room_.instruments;
    room_.instruments = {all[Minimal::floor], all[Minimal::level], all[Minimal::feedback]};
    room_.instruments[1].step = gauge.step_l;
    happen(Started{.clean = true});
    happen(Link{.up = true});
    happen(Reading{.instrument = 2, .value = 0});
    next_draw_h_ = habit.times_an_hour > 0 ? chance_.uniform() / habit.times_an_hour : 1e9;
  }

  void pass_a_minute() {
    now_ += 1min;
    if (now_ >= goes_off_) switched(false);
    const double hour = static_cast<double>(++minutes_) / 60;
    if (runs() && !float_closed) level_ += flow_l_h / 60;
    level_ -= (leak_l_h + habit_.steady_l_h) / 60;
    drifted_ += drift_l_h / 60;
    if (turns_every > 0min && minutes_ % turns_every.count() == 0) drift_l_h = -drift_l_h;
    if (hour >= next_draw_h_) {
      level_ -= habit_.litres;
      const double gap =
          habit_.at_random ? -std::log(1 - chance_.uniform()) : 0.8 + 0.4 * chance_.uniform();
      next_draw_h_ = hour + gap / habit_.times_an_hour;
    }
    happen(Reading{.instrument = 0, .value = 0});
    const double reading = level_ + drifted_ + gauge_.noise_l * chance_.normal();
    happen(Reading{.instrument = 1, .value = gauge_.step_l * std::round(reading / gauge_.step_l)});
  }
  void pass(Duration lasting) {
    for (Duration passed{0}; passed < lasting; passed += 1min) pass_a_minute();
  }
  // Hours until the alarm comes; none within `longest` is infinity.
  double hours_until(std::initializer_list<RuleId> alarms, Duration longest) {
    for (Duration passed{0}; passed < longest; passed += 1min) {
      pass_a_minute();
      const auto found = [&](RuleId alarm) { return finds(alarm); };
      if (std::any_of(alarms.begin(), alarms.end(), found)) return hours(passed + 1min);
    }
    return INFINITY;
  }
  bool finds(RuleId alarm) const { return state.findings[alarm].active; }
  bool runs() const { return goes_off_ != never; }
  double level_l() const { return level_; }
  Instant now() const { return now_; }

  State state;
  double leak_l_h = 0;
  double drift_l_h = 0;                 // of the gauge, upwards
  std::chrono::minutes turns_every{0};  // the drift, up and down
  double flow_l_h = 8;
  bool float_closed = false;

 private:
  void happen(const decltype(Event::what)& what) {
    step(room_, state, {now_, what}, effects_);
    const Effects done = effects_;
    for (const Effect& effect : done) {
      if (const auto* command = std::get_if<Command>(&effect)) switched(command->on);
    }
  }
  // The plug, by a command or by the end of its lease.
  void switched(bool on) {
    goes_off_ = on ? now_ + room_.actuators[0].lease : never;
    happen(Reading{.instrument = 2, .value = on ? 1.0 : 0.0});
  }

  room::Room room_;
  Effects effects_;
  Instant now_{24h * 20'000};
  Instant goes_off_ = never;
  long minutes_ = 0;
  double level_;
  double drifted_ = 0;
  Gauge gauge_;
  Habit habit_;
  rehearsal::Chance chance_;
  double next_draw_h_ = 0;
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
    fmt::print("{:<64} median {:.2f} h, 95 % {:.2f} h, longest {:.2f} h, {} draws\n", what, at(0.5),
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
Times leaks(const Gauge& gauge, const Habit& habit, double l_h, double drift_l_h, int draws,
            std::uint64_t seed) {
  const Times found = times(draws, seed, [&](std::uint64_t one) {
    Household home(gauge, habit, one, 170);
    home.drift_l_h = drift_l_h;
    home.pass(48h + (one % 60) * 7min);
    home.leak_l_h = l_h;
    return home.hours_until({RuleId::water_balance_off}, 24h);
  });
  found.print(
      fmt::format("{} L/h, drift {} L/h, {}, {}", l_h, drift_l_h, gauge.words, habit.words));
  return found;
}

// A float valve that sticks closed at any time after two hours of filling; the purifier and the
// household's habit are known.
// level_flat_while_filling tells it as well, where the flow is slow.
Times stuck_floats(const Gauge& gauge, const Habit& habit, double flow_l_h, int draws,
                   std::uint64_t seed) {
  const Times found = times(draws, seed, [&](std::uint64_t one) {
    Household home(gauge, habit, one, 60);
    home.flow_l_h = flow_l_h;
    home.state.ledger.learned = {.fills = 3, .share = flow_l_h / (280.0 / 24 * 0.584)};  // at 10 C
    home.state.ledger.balance.draws.an_hour = habit.at_random ? habit.times_an_hour : 0;
    home.state.ledger.balance.draws.began = home.now();
    home.state.ledger.balance.habit.learned = 3;
    home.pass(2h + (one % 60) * 1min);
    home.float_closed = true;
    return home.hours_until({RuleId::water_balance_off, RuleId::level_flat_while_filling}, 4h);
  });
  found.print(fmt::format("stuck float, {} L/h, {}, {}", flow_l_h, gauge.words, habit.words));
  return found;
}

// What was called what in years in which nothing was wrong.
struct FalseAlarms {
  int leak = 0, stuck_float = 0, slow = 0, draw = 0, fills = 0;
  int balance() const { return leak + stuck_float + slow; }
};

void count(const state::Balance& balance, FalseAlarms& alarms) {
  if (balance.leak.found) {
    ++alarms.leak;
  } else if (balance.stall.found) {
    ++alarms.stuck_float;
  } else {
    ++alarms.slow;
  }
}

// The household takes its water and the purifier makes it anew; the gauge drifts up for eight hours
// and down for eight.
FalseAlarms quiet_years(const Gauge& gauge, const Habit& habit, double drift_l_h, int years,
                        std::uint64_t seed) {
  support::print_seed(seed);
  FalseAlarms alarms;
  for (int year = 0; year < years; ++year) {
    Household home(gauge, habit, seed * 1'000 + static_cast<std::uint64_t>(year), 170);
    home.drift_l_h = drift_l_h;
    home.turns_every = 8h;
    bool off = false, drawn = false, ran = false;
    for (long minute = 0; minute < 365L * 24 * 60; ++minute) {
      home.pass_a_minute();
      if (home.finds(RuleId::water_balance_off) && !off) count(home.state.ledger.balance, alarms);
      if (home.finds(RuleId::draw_unusual) && !drawn) ++alarms.draw;
      if (home.runs() && !ran) ++alarms.fills;
      off = home.finds(RuleId::water_balance_off);
      drawn = home.finds(RuleId::draw_unusual);
      ran = home.runs();
    }
  }
  fmt::print("{:<64} leak {}, stuck float {}, slow {}, unusual draw {} in {} years, {} fills\n",
             fmt::format("quiet, drift {} L/h, {}, {}", drift_l_h, gauge.words, habit.words),
             alarms.leak, alarms.stuck_float, alarms.slow, alarms.draw, years, alarms.fills);
  return alarms;
}

int draws() { return from_environment("TIDEWRIGHT_DRAWS", 40); }
int years() { return from_environment("TIDEWRIGHT_YEARS", 1); }

class Balance : public testing::TestWithParam<std::uint64_t> {};

// Found within 4 h, says the issue. One in ten may be late by the noise.
TEST_P(Balance, ALeakOf1LitreAnHourIsFoundWithin4Hours) {
  EXPECT_LE(leaks(fine, none, 1, 0, draws(), GetParam()).later_than(4), draws() / 10);
}

TEST_P(Balance, ALeakOf3LitresAnHourIsFoundWithin4HoursThroughDrift) {
  EXPECT_LE(leaks(fine, none, 3, -0.5, draws(), GetParam()).later_than(4), draws() / 10);
  EXPECT_LE(leaks(fine, none, 3, 0.5, draws(), GetParam()).later_than(4), draws() / 10);
}

TEST_P(Balance, AStuckFloatIsFoundWithin30Minutes) {
  EXPECT_LE(stuck_floats(fine, none, 8, draws(), GetParam()).later_than(0.5), draws() / 10);
}

TEST_P(Balance, AYearOfDriftIsAtMostOneAlarm) {
  const FalseAlarms alarms = quiet_years(fine, steady, 0.5, years(), GetParam());
  EXPECT_LE(alarms.balance(), years());
  EXPECT_LE(alarms.draw, years());
  EXPECT_GE(alarms.fills, 20 * years()) << "it lives: 2920 L in fills of 100 L";
}

// The household whose draws are most like a leak and a stuck float.
TEST_P(Balance, AYearOfDrawsByHandIsSeldomALeak) {
  const FalseAlarms alarms = quiet_years(fine, by_hand, 0, years(), GetParam());
  EXPECT_LE(alarms.balance(), years());
  EXPECT_LE(alarms.draw, years());
  EXPECT_GE(alarms.fills, 20 * years()) << "it lives: 3650 L in fills of 100 L";
}

INSTANTIATE_TEST_SUITE_P(Seeds, Balance, testing::ValuesIn(support::seeds({1})));

// The table of the long tier: what the issue asks for and what it does not. Without
// TIDEWRIGHT_YEARS two draws of each and no year, so that the table itself is kept alive.
TEST(BalanceTable, ForOtherGaugesAndHouseholds) {
  const bool is_long = std::getenv("TIDEWRIGHT_YEARS") != nullptr;
  const int draws_each = is_long ? draws() : 2;
  const int years_each = is_long ? years() : 0;
  const Habit households[] = {none,
                              steady,
                              pulses,
                              by_hand,
                              {"1 L every 3 h", 0, 0.33, 1, false},
                              {"2 L every 5 h", 0, 0.2, 2, false},
                              {"0.5 L at random, 8 L a day", 0, 0.67, 0.5, true},
                              {"1 L at random, 10 L a day", 0, 0.4, 1, true},
                              {"15 L at random, every 20 h", 0, 0.05, 15, true}};
  for (const std::uint64_t seed : support::seeds({1, 2, 3})) {
    for (const Gauge& gauge : {fine, whole_percent}) {
      for (const double flow_l_h : {3, 5, 8, 20}) {
        stuck_floats(gauge, none, flow_l_h, draws_each, seed);
        stuck_floats(gauge, by_hand, flow_l_h, draws_each, seed);
      }
      EXPECT_EQ(leaks(gauge, none, 3, 0.5, draws_each, seed).later_than(24), 0);
      EXPECT_EQ(leaks(gauge, none, 3, -0.5, draws_each, seed).later_than(24), 0);
      EXPECT_LE(quiet_years(gauge, none, 0.5, years_each, seed).balance(), years_each);
      for (const Habit& household : households) {
        leaks(gauge, household, 1, 0, draws_each, seed);
        // By whole percents the worst of them is called a leak three times a year in the mean.
        const int alarms = quiet_years(gauge, household, 0, years_each, seed).balance();
        EXPECT_LE(alarms, (gauge.step_l > 1 ? 5 : 1) * years_each);
      }
    }
  }
}

}  // namespace
}  // namespace tidewright
