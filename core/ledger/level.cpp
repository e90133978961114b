#include "core/ledger/level.hpp"

#include <algorithm>
#include <cmath>

#include "core/signal/ruling.hpp"

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

void begin_rate(state::LevelTrend& trend, Litres level, Instant now) {
  trend.rate = LitresPerHour{0};
  trend.from = trend.middle = level;
  trend.from_at = trend.middle_at = now;
}

// The rate is taken between two moves of the gauge, an hour or two apart where they are frequent:
// the older end of the stretch moves up when the newer one is an hour old.
void follow_rate(state::LevelTrend& trend, Litres level, Instant now) {
  const double hours_apart = hours(now - trend.from_at);
  if (hours_apart > 0) trend.rate = LitresPerHour{(level - trend.from).value / hours_apart};
  if (now - trend.middle_at < 1h) return;
  trend.from = trend.middle;
  trend.from_at = trend.middle_at;
  trend.middle = level;
  trend.middle_at = now;
}

// How far the smoothed level must move before that is no noise.
struct Band {
  Litres rise;
  Litres fall;
};

// A scatter under a quarter of a step leaves two neighbouring readings at most, and the dead band
// of two steps is enough. Above, four standard deviations of the smoothed level are passed over:
// of readings once a minute one in some weeks goes beyond by chance. [choice]
constexpr double noisy_above_steps = 0.25;
constexpr double smoothing = 0.2;  // the weight of the newest reading
constexpr double deviations = 4;
constexpr int judged_enough = 20;  // before so many scatters nothing is known of the gauge

bool is_noisy(const state::GaugeNoise& noise, double step) {
  return noise.count >= judged_enough && noise.spread.value > noisy_above_steps * step;
}

// Two readings on end so far off are no noise, but water: it is followed at once. One alone is
// passed over. Upwards it must be more, for in a fill the smoothed level lags by one scatter or so.
constexpr double leap_down = 3.5;
constexpr double leap_up = 5;

// How many scatters a reading is off the smoothed level.
double off(Litres calm, Litres reading, const state::GaugeNoise& noise) {
  return (reading - calm) / noise.spread;
}

LevelMove smooth(Litres reading, const state::GaugeNoise& noise, Litres& calm) {
  const double now = off(calm, reading, noise);
  const double before = off(calm, noise.before, noise);
  LevelMove move;
  move.leapt = std::min(now, before) > leap_up || std::max(now, before) < -leap_down;
  if (move.leapt) {
    calm = (reading + noise.before) / 2;
  } else if (now > leap_up || now < -leap_down) {
    move.doubtful = true;
  } else {
    calm += (reading - calm) * smoothing;
  }
  return move;
}

// A quiet gauge is taken at its word.
LevelMove follow(Litres reading, const state::GaugeNoise& noise, double step, Litres& calm) {
  LevelMove move;
  move.leapt = noise.fresh == 2 && std::abs((reading - noise.before).value) > 2 * step;
  calm = reading;
  return move;
}

Band band(const state::GaugeNoise& noise, double step) {
  if (!is_noisy(noise, step)) return {Litres{0}, Litres{2 * step}};
  // What an average with such weights leaves of white noise.
  const Litres beyond = deviations * std::sqrt(smoothing / (2 - smoothing)) * noise.spread;
  return {beyond, std::max(beyond, Litres{2 * step})};
}

}  // namespace

LevelMove post_level(const Sources& from, std::optional<Litres> reading,
                     const state::GaugeNoise& noise, state::LevelTrend& trend) {
  if (!reading) return {};
  const auto gauge =
      signal::ruling(from.room, from.signals, room::Quantity::level, room::Place::vat);
  const double step = from.room.instruments[*gauge].step;
  const Instant now = from.circumstances.now;

  if (!trend.known) {
    trend.known = true;
    trend.calm = trend.peak = trend.at_off = *reading;
    trend.moved = now;
    begin_rate(trend, *reading, now);
    return {};
  }
  LevelMove move = is_noisy(noise, step) ? smooth(*reading, noise, trend.calm)
                                         : follow(*reading, noise, step, trend.calm);
  const auto [rise, fall] = band(noise, step);
  if (trend.calm > trend.peak + rise) {
    move.risen = trend.calm - trend.peak;
    follow_rate(trend, trend.calm, now);
  } else if (trend.calm < trend.peak - fall) {
    move.fallen = trend.peak - trend.calm;
    begin_rate(trend, trend.calm, now);
  } else {
    return move;
  }
  trend.peak = trend.calm;
  trend.moved = now;
  return move;
}

}  // namespace tidewright::ledger
