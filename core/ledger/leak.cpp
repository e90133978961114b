#include "core/ledger/leak.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

constexpr std::array<std::size_t, 11> windows{6, 8, 10, 12, 15, 18, 21, 24, 32, 40, 48};
constexpr std::size_t window_to_end = 9;  // a leak is over when so many slices show none

// The habit is learned in stretches of so many slices, from three on it is known, and it forgets
// after forty. Until it is known only what would empty a vat in days is a leak. [choices]
constexpr std::size_t stretch_of_habit = 24;
constexpr std::uint8_t known_from = 3;
constexpr std::uint8_t memory = 40;
constexpr LitresPerHour while_unknown{2};
constexpr double burst_counts = 0.125;  // of what it showed
// No habit is believed beyond 12 L a day, or twice what the file says of the tank. [choice]
constexpr LitresPerHour habit_most{0.5};

std::span<const float> newest(const state::Stretch& stretch, std::size_t count) {
  return std::span{stretch.levels}.subspan(stretch.count - count, count);
}

LitresPerHour believed(const room::Room& room, const state::Habit& habit) {
  const LitresPerHour told{room.vat ? room.vat->top_off_per_day.value / 24 : 0};
  return std::clamp(habit.usual, LitresPerHour{0}, std::max(habit_most, told * 2));
}

// An outlier moves what is usual by no more than three of its deviations.
void learn(double fallen, double over_hours, double level_variance, state::Habit& habit) {
  if (habit.learned < memory) ++habit.learned;
  const double weight = 1.0 / habit.learned;
  double beyond = fallen - habit.usual.value * over_hours;
  if (habit.learned == 1) {
    habit.usual = {fallen / over_hours};
    return;
  }
  if (habit.learned > 2 * known_from) {
    const double most = 3 * std::sqrt(std::max(0.0, habit.restless) * over_hours + level_variance);
    beyond = std::clamp(beyond, -most, most);
  }
  habit.usual += LitresPerHour{beyond / over_hours * weight};
  // May fall below nothing by chance; cutting that off here would make a calm household restless.
  const double restless = (beyond * beyond - level_variance) / over_hours;
  habit.restless += (restless - habit.restless) * weight;
}

// Four hours are learned when the next four were no leak either: a leak must not become a habit.
void post_habit(const LevelError& error, Duration slice, const state::Balance& balance,
                state::Habit& habit) {
  const state::Stretch& stretch = balance.stretch;
  habit.seen += slice;
  if (balance.leak.found) {
    habit.waits = false;
    habit.seen = Duration{0};
    return;
  }
  const auto long_enough = static_cast<int>(stretch_of_habit) * slice;
  if (habit.seen < long_enough || stretch.count < stretch_of_habit) return;
  // Two slices at either end, whose middles are two slices less than the whole apart.
  const double over_hours = (stretch_of_habit - 2) * hours(slice);
  const double level_variance = error.deviation.value * error.deviation.value +
                                2 * error.rounding.value * error.rounding.value;
  if (habit.waits) learn(static_cast<double>(habit.fallen), over_hours, level_variance, habit);
  const auto levels = newest(stretch, stretch_of_habit);
  habit.fallen =
      (levels[0] + levels[1] - levels[stretch_of_habit - 2] - levels[stretch_of_habit - 1]) / 2;
  habit.waits = true;
  habit.seen = Duration{0};
}

// A leak that had ended before anybody could have mended it was none: somebody drew often. The
// household is more restless than was known.
void learn_burst(const state::Leak& leak, state::Habit& habit) {
  const double over_hours = leak.litres.value / leak.rate.value;
  const double beyond = leak.litres.value - habit.usual.value * over_hours;
  habit.restless += burst_counts * (beyond * beyond / over_hours - habit.restless);
}

bool surely_leaks(const Fall& seen, LitresPerHour allowed) {
  return seen.rate - seen.error * leak_deviations - seen.bound > allowed && seen.between > allowed;
}

}  // namespace

LitresPerHour fall_allowed(const room::Room& room, const state::Habit& habit) {
  if (habit.learned < known_from) return while_unknown;
  return believed(room, habit) + drift_allowed;
}

void post_leak(const room::Room& room, const LevelError& known, Duration slice,
               state::Balance& balance) {
  const state::Stretch& stretch = balance.stretch;
  LevelError error = known;
  error.restless = std::max(0.0, balance.habit.restless);
  const LitresPerHour allowed = fall_allowed(room, balance.habit);
  state::Leak& leak = balance.leak;
  if (leak.found) {
    leak.litres += Litres{leak.rate.value * hours(slice)};
    if (leak.stood <= window_to_end) ++leak.stood;
  }
  for (const std::size_t window : windows) {
    if (window > stretch.count) break;
    const Fall seen = fall(newest(stretch, window), hours(slice), error);
    if (!surely_leaks(seen, allowed)) continue;
    leak.rate = seen.rate;
    leak.error = seen.error;
    if (leak.found) continue;
    leak.found = true;
    leak.litres = {seen.rate.value * hours(static_cast<int>(window) * slice)};
  }
  if (leak.found && stretch.count >= window_to_end) {
    const Fall seen = fall(newest(stretch, window_to_end), hours(slice), error);
    if (seen.rate + seen.error * 2 + seen.bound < allowed) {
      if (leak.stood <= window_to_end) learn_burst(leak, balance.habit);
      leak = {};
    }
  }
  post_habit(error, slice, balance, balance.habit);
}

}  // namespace tidewright::ledger
