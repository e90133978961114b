#include <array>

#include "core/nights/night.hpp"

namespace tidewright::nights {
namespace {

using H = Habits;

Duration of_seconds(double s) { return Duration{static_cast<Duration::rep>(s * 1000)}; }

// Ranges: what households report at their worst, from memory, and a little more; no source.
constexpr std::array rows{
    HabitRow{"begins_at_h", &H::begins_at_h, 0, 24},
    HabitRow{"season_swing_c", &H::season_swing_c, 0, 0},
    HabitRow{"vat_filled", &H::vat_filled, 0.05, 0.97},
    HabitRow{"mixing_filled", &H::mixing_filled, 0.05, 0.95},
    HabitRow{"water_c", &H::water_c, 3, 30},
    HabitRow{"feed_ppm", &H::feed_ppm, 30, 1500},
    HabitRow{"membrane_condition", &H::membrane_condition, 0.35, 1.15},
    HabitRow{"membrane_rejection", &H::membrane_rejection, 0.85, 0.99},
    HabitRow{"line_bar", &H::line_bar, 1, 4},
    HabitRow{"boosted_bar", &H::boosted_bar, 4, 8},
    HabitRow{"top_off_l_day", &H::top_off_l_day, 0, 40},
    HabitRow{"level_noise", &H::level_noise, 0, 0.006},
    HabitRow{"messages_lost", &H::messages_lost, 0, 0.03},
    HabitRow{"float_switch_at", &H::float_switch_at, 0.88, 0.95},
    HabitRow{"high_high_at", &H::high_high_at, 0.97, 0.995},
    HabitRow{"obeys_after_s", &H::obeys_after_s, 0.01, 3},
    HabitRow{"feedback_lags_s", &H::feedback_lags_s, 0.05, 5},
    HabitRow{"feedback_every_s", &H::feedback_every_s, 30, 300},
    HabitRow{"broker_latency_s", &H::broker_latency_s, 0.005, 0.8},
    HabitRow{"disk_takes_s", &H::disk_takes_s, 0.005, 0.9},
    HabitRow{"instruments_retain", &H::instruments_retain, 0, 1},
    HabitRow{"instruments_date", &H::instruments_date, 0, 1},
    HabitRow{"day_longest_h", &H::day_longest_h, 1, 6},
    HabitRow{"lease_of_nobody", &H::lease_of_nobody, 0, 1},
};

}  // namespace

std::span<const HabitRow> habits() { return rows; }

rehearsal::Settings settings_of(const Habits& habits) {
  rehearsal::Settings settings;
  settings.weather = {Celsius{habits.water_c}, Celsius{habits.season_swing_c}, Celsius{0.5}};
  settings.works.feed = PartsPerMillion{habits.feed_ppm};
  settings.works.begins_filled = habits.vat_filled;
  settings.works.mixing.begins_filled = habits.mixing_filled;
  settings.works.membrane.condition = habits.membrane_condition;
  settings.works.membrane.rejection = habits.membrane_rejection;
  settings.works.membrane.line_bar = habits.line_bar;
  settings.works.membrane.boosted_bar = habits.boosted_bar;
  settings.plug.obeys_after = of_seconds(habits.obeys_after_s);
  settings.plug.feedback_lags = of_seconds(habits.feedback_lags_s);
  settings.plug.feedback_every = of_seconds(habits.feedback_every_s);
  settings.top_off_per_day = Litres{habits.top_off_l_day};
  settings.level_noise = habits.level_noise;
  settings.messages_lost = habits.messages_lost;
  settings.float_switch_at = habits.float_switch_at;
  settings.high_high_at = habits.high_high_at;
  return settings;
}

room::Room room_of(const room::Room& household, const Habits& habits) {
  room::Room room = household;
  for (room::Actuator& actuator : room.actuators) {
    if (habits.day_longest_h > 0) {
      actuator.on_per_day_longest = of_seconds(habits.day_longest_h * 3600);
    }
    if (habits.lease_of_nobody > 0) actuator.lease_kind = room::LeaseKind::none;
  }
  return room;
}

}  // namespace tidewright::nights
