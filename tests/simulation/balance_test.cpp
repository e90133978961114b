// The water balance against chance, through the whole step: how soon a leak and a stuck float are
// found on a vat of 0.5 m2 whose gauge scatters by 1 mm and speaks once a minute, and how often a
// household's quiet year is called a leak. The issue's own figures are the bounds. Every draw has a
// seed of its own, printed with the first, so that a run is the same for ever.
//   TIDEWRIGHT_DRAWS, TIDEWRIGHT_YEARS   more of them (tests/long.sh balance)
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
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
  bool runs() const { return state.drives[0].on; }
  double level_l() const { return level_; }

  State state;
  double leak_l_h = 0;
  double drift_l_h = 0;  // of the gauge, upwards
  std::chrono::minutes turns_every{0};  // the drift, up and down
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

// A float valve that sticks closed at any time after two hours of filling; the purifier is known.
Times stuck_floats(const Gauge& gauge, const Habit& habit, double flow_l_h, int draws,
                   std::uint64_t seed) {
  const Times found = times(draws, seed, [&](std::uint64_t one) {
    Household home(gauge, habit, one, 60);
    home.flow_l_h = flow_l_h;
    home.state.ledger.learned = {.fills = 3, .share = flow_l_h / (280.0 / 24 * 0.584)};  // at 10 C
    home.pass(2h + (one % 60) * 1min);
    home.float_closed = true;
    return home.hours_until({RuleId::water_balance_off, RuleId::level_flat_while_filling}, 4h);
  });
  found.print(fmt::format("stuck float, {} L/h, {}, {}", flow_l_h, gauge.words, habit.words));
  return found;
}

// Years in which nothing is wrong: the household takes its water and the purifier makes it anew.
int false_alarms(const Gauge& gauge, const Habit& habit, double drift_l_h, int years,
                 std::uint64_t seed) {
  support::print_seed(seed);
  int leak = 0, stall = 0, slow = 0, draw = 0, fills = 0;
  for (int year = 0; year < years; ++year) {
    Household home(gauge, habit, seed * 1'000 + static_cast<std::uint64_t>(year), 170);
    home.drift_l_h = drift_l_h;
    home.turns_every = 8h;
    bool off = false, drawn = false, ran = false;
    for (long minute = 0; minute < 365L * 24 * 60; ++minute) {
      home.pass_a_minute();
      const bool off_now = home.finds(RuleId::water_balance_off);
      const bool drawn_now = home.finds(RuleId::draw_unusual);
      if (off_now && !off) {
        if (home.state.ledger.balance.leak.found) ++leak;
        else if (home.state.ledger.balance.stall.found) ++stall;
        else ++slow;
      }
      if (drawn_now && !drawn) ++draw;
      if (home.runs() && !ran) ++fills;
      off = off_now;
      drawn = drawn_now;
      ran = home.runs();
    }
  }
  fmt::print("{:<64} in {} years: leak {}, stall {}, slow {}, draw {}; {} fills\n",
             fmt::format("quiet, drift {} L/h, {}, {}", drift_l_h, gauge.words, habit.words), years,
             leak, stall, slow, draw, fills);
  return leak + stall + slow + draw;
}

int draws() { return from_environment("TIDEWRIGHT_DRAWS", 30); }
int years() { return from_environment("TIDEWRIGHT_YEARS", 1); }

class Balance : public testing::TestWithParam<std::uint64_t> {};

TEST_P(Balance, T) {
  const auto s = GetParam();
  leaks(fine, none, 1, 0, draws(), s);
  leaks(fine, steady, 1, 0, draws(), s);
  leaks(fine, pulses, 1, 0, draws(), s);
  leaks(fine, by_hand, 1, 0, draws(), s);
  leaks(fine, none, 3, -0.5, draws(), s);
  leaks(fine, none, 3, 0.5, draws(), s);
  leaks(whole_percent, none, 1, 0, draws(), s);
  for (double f : {3.0, 5.0, 8.0, 20.0}) {
    stuck_floats(fine, none, f, draws(), s);
    stuck_floats(fine, by_hand, f, draws(), s);
    stuck_floats(whole_percent, none, f, draws(), s);
  }
  for (const Gauge& g : {fine, whole_percent})
    for (const Habit& h : {none, steady, pulses, Habit{"1 L every 3 h", 0, 0.33, 1, false},
                           Habit{"2 L every 5 h", 0, 0.2, 2, false},
                           Habit{"0.5 L at random, 8 L a day", 0, 0.67, 0.5, true},
                           Habit{"1 L at random, 10 L a day", 0, 0.4, 1, true}, by_hand,
                           Habit{"15 L at random, every 20 h", 0, 0.05, 15, true}})
      false_alarms(g, h, 0, years(), s);
  false_alarms(fine, none, 0.5, years(), s);
}
INSTANTIATE_TEST_SUITE_P(Seeds, Balance, testing::ValuesIn(support::seeds({1})));

}  // namespace
}  // namespace tidewright
