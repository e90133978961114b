#include "core/ledger/level.hpp"

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

}  // namespace

LevelMove post_level(const Sources& from, state::LevelTrend& trend) {
  const auto gauge =
      signal::ruling(from.room, from.signals, room::Quantity::level, room::Place::vat);
  if (!gauge || from.signals[*gauge].quality != Quality::good) return {};
  const Instant now = from.circumstances.now;
  const Litres level{from.signals[*gauge].value};
  const Litres flicker{2 * from.room.instruments[*gauge].step};

  if (!trend.known) {
    trend.known = true;
    trend.peak = trend.at_off = level;
    trend.moved = now;
    begin_rate(trend, level, now);
    return {};
  }
  LevelMove move;
  if (level > trend.peak) {
    move.risen = level - trend.peak;
    follow_rate(trend, level, now);
  } else if (level < trend.peak - flicker) {
    move.fallen = trend.peak - level;
    begin_rate(trend, level, now);
  } else {
    return {};
  }
  trend.peak = level;
  trend.moved = now;
  return move;
}

}  // namespace tidewright::ledger
