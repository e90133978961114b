#include "core/signal/water_meter.hpp"

#include <algorithm>

#include "core/signal/ruling.hpp"
#include "core/signal/running.hpp"

namespace tidewright::signal {
namespace {

using namespace std::chrono_literals;
using room::Instrument;
using room::Quantity;

// More than a household pipe gives. [common practice, no source]
constexpr double flow_most_l_h = 3600;
// Drops that are this far apart do not add up to a flow. [choice]
constexpr Duration forgotten_after = 1h;

// What has passed between two counts. One that falls was restarted, and what passed meanwhile is
// not known: a few litres too few, where a guess might cry leak.
double counted(const Instrument& instrument, double before, double after, Duration between) {
  if (after >= before) return after - before;
  const double wrapped = after + instrument.wraps_at - before;
  const double most = flow_most_l_h * hours(between) + instrument.step;
  const bool is_wrap = instrument.wraps_at > 0 && wrapped >= 0 && wrapped <= most;
  return is_wrap ? wrapped : 0;
}

void book(const room::Room& room, const Instrument& instrument, const state::Signal& signal,
          state::WaterMeter& meter) {
  if (!signal.live || signal.received <= meter.heard) return;
  const bool first = meter.heard == long_ago;
  const Duration between = signal.received - meter.heard;
  meter.heard = signal.received;
  double passed = 0;
  if (instrument.quantity == Quantity::flow) {
    meter.rate = LitresPerHour{signal.value};
    if (meter.rate < least_flow(room, instrument)) meter.rate = LitresPerHour{0};
    passed = meter.rate.value * hours(std::min(between, stale_after(instrument)));
  } else {
    passed = counted(instrument, meter.count.value, signal.value, between);
    meter.count = Litres{signal.value};
    meter.rate = LitresPerHour{first ? 0 : passed / hours(between)};
  }
  if (first) return;
  meter.passed += Litres{passed};
  if (passed > 0) meter.flowed = meter.heard;
}

}  // namespace

std::optional<room::InstrumentIndex> water_meter(const room::Room& room,
                                                 const state::Signals& signals, room::Place place) {
  const auto flow = ruling(room, signals, Quantity::flow, place);
  return flow ? flow : ruling(room, signals, Quantity::water_count, place);
}

std::size_t metered(room::Place place) {
  const auto* const found =
      std::find(state::metered_places.begin(), state::metered_places.end(), place);
  return static_cast<std::size_t>(found - state::metered_places.begin());
}

// A low-flow cut-off, as flow meters have: two steps of the display, or a twentieth of what the
// membrane makes. [choice]
LitresPerHour least_flow(const room::Room& room, const Instrument& instrument) {
  const double rated = room.purifier ? room.purifier->rated.value : 0;
  return LitresPerHour{std::max(2 * instrument.step, rated / 20)};
}

void begin_anew(state::Comparison& comparison, Instant now) {
  for (state::WaterMeter& meter : comparison.water) meter.heard = long_ago;
  comparison.quiet = never;
  comparison.level.open = comparison.balance.open = false;
  comparison.at_odds = never;
  comparison.compared = now;
}

void book_water(const Beside& beside, const state::Signals& signals,
                state::Comparison& comparison) {
  const Instant now = beside.circumstances.now;
  const bool off = feed_is_off(beside.room, signals, beside.drives);
  comparison.quiet = off ? std::min(comparison.quiet, now) : never;
  for (const room::Place place : state::metered_places) {
    const auto instrument = water_meter(beside.room, signals, place);
    if (!instrument) continue;
    state::WaterMeter& meter = comparison.water[metered(place)];
    book(beside.room, beside.room.instruments[*instrument], signals[*instrument], meter);
    const bool running_down = !off || now - comparison.quiet < run_down;
    const bool heard = signals[*instrument].quality != Quality::bad;
    const bool at_rest = heard && now - meter.flowed > forgotten_after;
    if (running_down || at_rest) meter.at_quiet = meter.passed;
  }
}

}  // namespace tidewright::signal
