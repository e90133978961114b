#include "core/ledger/leak.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "core/ledger/draws.hpp"

namespace tidewright::ledger {
namespace {

// Three hours at least: in less, a few draws close together look like a steady fall; where somebody
// draws by hand more often than every eight hours, five hours at least. [choices]
constexpr std::array<std::size_t, 6> windows{18, 21, 24, 32, 40, 48};
constexpr double often_an_hour = 1.0 / 8;
constexpr std::size_t least_where_often = 32;
constexpr std::size_t window_to_end = 9;  // a leak is over when so many slices show none

// The habit is learned in stretches of so many slices, from three on it is known, and it forgets
// after forty. Until it is known only what would empty a vat in days is a leak. [choices]
constexpr std::uint8_t stretch_of_habit = 24;
constexpr std::uint8_t known_from = 3;
constexpr std::uint8_t memory = 40;
constexpr LitresPerHour while_unknown{2};
constexpr double burst_counts = 0.125;  // of what it showed [choice]
// Few large draws stray farther than the random walk of the same variance. [choice]
constexpr double unevenly = 1.5;
// No habit is believed beyond 12 L a day, or twice what the file says of the tank. [choice]
constexpr LitresPerHour habit_most{0.5};

Fall newest(const state::Balance& balance, std::size_t count, double slice_hours,
            const LevelError& error) {
  const state::Stretch& stretch = balance.stretch;
  return fall(std::span{stretch.levels}.subspan(stretch.count - count, count), slice_hours, error);
}

LitresPerHour believed(const room::Room& room, const state::Habit& habit) {
  const LitresPerHour told{room.vat ? room.vat->top_off_per_day.value / 24 : 0};
  return std::clamp(habit.usual, LitresPerHour{0}, std::max(habit_most, told * 2));
}

// An outlier moves what is usual by no more than three of its deviations.
void learn(double over_hours, state::Habit& habit) {
  if (habit.learned < memory) ++habit.learned;
  if (habit.learned == 1) {
    habit.usual = habit.fell;
    return;
  }
  const double noise = habit.fell_error.value * habit.fell_error.value;
  double beyond = (habit.fell - habit.usual).value;
  if (habit.learned > 2 * known_from) {
    const double walk = 1.2 * std::max(0.0, habit.restless) / over_hours;
    const double most = 3 * std::sqrt(walk + noise);
    beyond = std::clamp(beyond, -most, most);
  }
  habit.usual += LitresPerHour{beyond / habit.learned};
  // May fall below nothing by chance; cutting that off here would make a calm household restless.
  const double restless = (beyond * beyond - noise) * over_hours / 1.2;
  habit.restless += (restless - habit.restless) / habit.learned;
}

// Four hours are learned when the next four were no leak either: a leak must not become a habit.
void post_habit(const LevelError& noise, double slice_hours, const state::Balance& balance,
                state::Habit& habit) {
  if (balance.leak.found) {
    habit.waits = false;
    habit.slices = 0;
    return;
  }
  // Never more than stand in this stretch, so that what is learned lies within it.
  habit.slices = std::min<std::uint8_t>(habit.slices + 1, balance.stretch.count);
  if (habit.slices < stretch_of_habit) return;
  if (habit.waits) learn(stretch_of_habit * slice_hours, habit);
  const Fall seen = newest(balance, stretch_of_habit, slice_hours, noise);
  habit.slices = 0;
  habit.waits = std::isfinite(seen.error.value);
  if (!habit.waits) return;
  habit.fell = seen.rate;
  habit.fell_error = {std::hypot(seen.error.value, seen.bound.value / 2)};
}

// A leak that was over before anybody could have mended it was none: somebody drew often, and the
// household is more restless than was known.
void learn_burst(const state::Leak& leak, double slice_hours, state::Habit& habit) {
  const double beyond = (leak.rate - habit.usual).value;
  const double restless = beyond * beyond * windows[0] * slice_hours / 1.2;
  habit.restless += (restless - habit.restless) * burst_counts;
}

bool surely_leaks(const Fall& seen, LitresPerHour allowed) {
  return seen.rate - seen.error * leak_deviations - seen.bound > allowed && seen.between > allowed;
}

void find_leak(const LevelError& error, Duration slice, LitresPerHour allowed, Instant now,
               state::Balance& balance) {
  state::Leak& leak = balance.leak;
  const bool often = draws_an_hour(balance.draws, now) > often_an_hour;
  for (const std::size_t window : windows) {
    if (window > balance.stretch.count) break;
    if (often && window < least_where_often) continue;
    const Fall seen = newest(balance, window, hours(slice), error);
    if (!surely_leaks(seen, allowed)) continue;
    if (!leak.found) leak.began = now - static_cast<int>(window) * slice;
    leak.found = true;
    leak.rate = seen.rate;
    leak.error = seen.error;
    return;  // the shortest knows best how fast it is now
  }
}

}  // namespace

bool is_known(const state::Habit& habit) { return habit.learned >= known_from; }

LitresPerHour fall_allowed(const room::Room& room, const state::Habit& habit) {
  if (!is_known(habit)) return while_unknown;
  return believed(room, habit) + drift_allowed;
}

void post_leak(const room::Room& room, const LevelError& noise, Duration slice, Instant now,
               state::Balance& balance) {
  LevelError error = noise;
  error.restless = unevenly * std::max(0.0, balance.habit.restless);
  const LitresPerHour allowed = fall_allowed(room, balance.habit);
  state::Leak& leak = balance.leak;
  find_leak(error, slice, allowed, now, balance);
  if (leak.found && leak.slices <= window_to_end) ++leak.slices;
  if (leak.found && balance.stretch.count >= window_to_end) {
    const Fall seen = newest(balance, window_to_end, hours(slice), error);
    if (seen.rate + seen.error * 2 + seen.bound < allowed) {
      if (leak.slices <= window_to_end) learn_burst(leak, hours(slice), balance.habit);
      leak = {};
    }
  }
  if (leak.found) leak.litres = {leak.rate.value * hours(now - leak.began)};
  post_habit(noise, hours(slice), balance, balance.habit);
}

}  // namespace tidewright::ledger
