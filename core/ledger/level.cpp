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

// Two readings on end that far off are no noise, but water: it is followed at once.
constexpr double leap = 5;

Litres smoothed(Litres calm, Litres reading, const state::GaugeNoise& noise) {
  const double off = (reading - calm) / noise.spread;
  const double off_before = (noise.before - calm) / noise.spread;
  const bool leapt = std::min(off, off_before) > leap || std::max(off, off_before) < -leap;
  return leapt ? (reading + noise.before) / 2 : calm + (reading - calm) * smoothing;
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
  trend.calm = is_noisy(noise, step) ? smoothed(trend.calm, *reading, noise) : *reading;
  const auto [rise, fall] = band(noise, step);
  LevelMove move;
  if (trend.calm > trend.peak + rise) {
    move.risen = trend.calm - trend.peak;
    follow_rate(trend, trend.calm, now);
  } else if (trend.calm < trend.peak - fall) {
    move.fallen = trend.peak - trend.calm;
    begin_rate(trend, trend.calm, now);
  } else {
    return {};
  }
  trend.peak = trend.calm;
  trend.moved = now;
  return move;
}

}  // namespace tidewright::ledger
