#include "core/signal/judge.hpp"

#include "core/signal/age.hpp"
#include "core/signal/no_reading.hpp"
#include "core/signal/quality.hpp"
#include "core/signal/range.hpp"
#include "core/signal/rate.hpp"
#include "core/signal/silence.hpp"
#include "core/signal/spike.hpp"

namespace tidewright::signal {
namespace {

using room::Instrument;
using room::Quantity;
using state::Signal;

void take_up(Signal& signal, double value, Instant now) {
  if (!signal.seen || signal.value != value) signal.changed = now;
  signal.value = value;
  signal.seen = true;
}

// A message of unknown age adds danger; otherwise it is shown as doubtful until a live one comes.
void take_undated(const Instrument& instrument, Signal& signal, double value, Instant now) {
  const bool danger = is_danger(instrument.quantity, value);
  if (!danger && (signal.live || instrument.quantity == Quantity::wetness)) return;
  take_up(signal, value, now);
  if (signal.live) return;
  lose(signal, Quality::uncertain, DeviceStatus::check_function, Why::retained_only, now);
}

void take_fresh(const Instrument& instrument, Signal& signal, double value, Instant measured,
                Instant now) {
  if (is_leap(instrument, signal, value, now)) {
    signal.doubted = value;
    return refuse(signal, Why::changes_too_fast, now);
  }
  take_up(signal, despiked(instrument, signal, value), now);
  // A late word of one that is gone would be believed until its next check-in.
  if (instrument.on_change && instrument.has_availability && !signal.available) {
    return lose(signal, Quality::bad, DeviceStatus::failure, Why::said_unavailable, now);
  }
  signal.received = measured;
  signal.live = true;
  signal.refused_in_a_row = 0;
  if (!is_plausible(instrument, signal.value)) {
    return lose(signal, Quality::uncertain, DeviceStatus::out_of_specification,
                Why::outside_plausible_range, now);
  }
  if (signal.doubt != Why::nothing) return apply_doubt(signal, now);
  find_good(signal);
}

void take(const Instrument& instrument, Signal& signal, const Reading& reading, Instant now) {
  const double value = reading.value;
  if (is_power_up(instrument, signal, value, now)) return refuse(signal, Why::failure_value, now);
  if (!is_measurable(instrument, value)) return refuse(signal, Why::outside_gross_range, now);
  const Taken taken = age_of(instrument, signal, reading, now);
  if (taken.age == Age::fresh) {
    take_fresh(instrument, signal, value, taken.at, now);
  } else if (taken.age == Age::unknown || is_danger(instrument.quantity, value)) {
    take_undated(instrument, signal, value, now);
  }
}

}  // namespace

void judge(const room::Room& room, const Event& event, const state::Circumstances& known,
           state::Signals& signals, Wake& wake) {
  const Instant now = known.now;
  const auto* link = std::get_if<Link>(&event.what);
  const bool started = std::holds_alternative<Started>(event.what);
  if (started || link != nullptr) {
    for (std::size_t i = 0; i < room.instruments.size(); ++i) {
      begin_anew(room.instruments[i], signals[i], known, started);
    }
  } else if (const auto* reading = std::get_if<Reading>(&event.what)) {
    const auto i = reading->instrument;
    take(room.instruments[i], signals[i], *reading, now);
  } else if (const auto* refusal = std::get_if<Refusal>(&event.what)) {
    refuse(signals[refusal->instrument], Why::not_a_reading, now);
  } else if (const auto* availability = std::get_if<Availability>(&event.what)) {
    const auto i = availability->instrument;
    if (set_available(room.instruments[i], signals[i], availability->online, now)) {
      take_fresh(room.instruments[i], signals[i], signals[i].value, now, now);
    }
  }
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    watch_silence(room.instruments[i], signals[i], known, wake);
  }
}

}  // namespace tidewright::signal
