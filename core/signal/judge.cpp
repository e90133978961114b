#include "core/signal/judge.hpp"

#include <cmath>
#include <limits>

#include "core/base/mutant.hpp"

namespace tidewright::signal {
namespace {

using room::Instrument;
using room::Quantity;
using state::Signal;

template <class T>
void count(T& counter) {
  if (counter < std::numeric_limits<T>::max()) ++counter;
}

void lose(Signal& signal, Quality quality, DeviceStatus status, Why why, Instant now) {
  if (signal.quality == Quality::good) signal.lost = now;
  signal.quality = quality;
  signal.status = status;
  signal.why = why;
  signal.good_in_a_row = 0;
}

void take_up(Signal& signal, double value, Instant now) {
  if (!signal.seen || signal.value != value) signal.changed = now;
  signal.value = value;
  signal.seen = true;
}

void refuse(Signal& signal, Why why, Instant now) {
  count(signal.refused);
  count(signal.refused_in_a_row);
  if (signal.refused_in_a_row >= 2) lose(signal, Quality::bad, DeviceStatus::failure, why, now);
}

// Values whose "1" is a danger, or the cautious view of things: believed at any age.
bool is_danger(Quantity quantity, double value) {
  const bool is_switch = quantity == Quantity::wetness || quantity == Quantity::float_switch ||
                         quantity == Quantity::feedback;
  return is_switch && value >= 0.5;
}

bool within_reach(const Instrument& instrument, double from, Instant then, double to, Instant now) {
  if (instrument.per_second_max <= 0) return true;
  return std::abs(to - from) <=
         instrument.per_second_max * seconds(now - then) + 2 * instrument.step;
}

bool is_leap(const Instrument& instrument, const Signal& signal, double value, Instant now) {
  if (signal.quality != Quality::good) return false;
  if (within_reach(instrument, signal.value, signal.received, value, now)) return false;
  const bool seen_again = signal.refused_in_a_row > 0 &&
                          within_reach(instrument, signal.doubted, signal.received, value, now);
  return !seen_again;
}

// A message of unknown age adds danger; otherwise it is shown as doubtful until a live one comes.
void take_undated(const Instrument& instrument, Signal& signal, double value, Instant now) {
  if (is_danger(instrument.quantity, value)) {
    take_up(signal, value, now);
    if (!signal.live) {
      lose(signal, Quality::uncertain, DeviceStatus::check_function, Why::retained_only, now);
    }
  } else if (!signal.live && instrument.quantity != Quantity::wetness) {
    take_up(signal, value, now);
    lose(signal, Quality::uncertain, DeviceStatus::check_function, Why::retained_only, now);
  }
}

void take_live(const Instrument& instrument, Signal& signal, double value, Instant measured,
               Instant now) {
  if (is_leap(instrument, signal, value, now)) {
    signal.doubted = value;
    return refuse(signal, Why::changes_too_fast, now);
  }
  take_up(signal, value, now);
  signal.received = measured;
  signal.live = true;
  signal.refused_in_a_row = 0;
  if (value < instrument.plausible_low || value > instrument.plausible_high) {
    return lose(signal, Quality::uncertain, DeviceStatus::out_of_specification,
                Why::outside_plausible_range, now);
  }
  signal.quality = Quality::good;
  signal.status = DeviceStatus::normal;
  signal.why = Why::nothing;
  count(signal.good_in_a_row);
}

void take(const Instrument& instrument, Signal& signal, const Reading& reading, Instant now) {
  const bool a_number = std::isfinite(reading.value) && reading.value >= instrument.gross_low &&
                        reading.value <= instrument.gross_high;
  if (!a_number) return refuse(signal, Why::outside_gross_range, now);

  const bool dated_and_fresh = reading.arrival == Arrival::dated && reading.taken <= now &&
                               now - reading.taken < stale_after(instrument) &&
                               instrument.quantity != Quantity::wetness;
  const bool is_live = reading.arrival == Arrival::live || mutant(Mutant::retained_dry_believed);
  if (is_live && reading.taken == long_ago) {
    take_live(instrument, signal, reading.value, now, now);
  } else if (is_live || dated_and_fresh) {
    // What is not newer than the last one known, by the source's own time, changes nothing.
    if (reading.taken > signal.received || mutant(Mutant::older_accepted)) {
      take_live(instrument, signal, reading.value, reading.taken, now);
    } else if (is_danger(instrument.quantity, reading.value)) {
      take_undated(instrument, signal, reading.value, now);
    }
  } else {
    take_undated(instrument, signal, reading.value, now);
  }
}

// An instrument that speaks on change only is supervised by its availability: while that says
// online, its last live value stands.
void set_available(const Instrument& instrument, Signal& signal, bool online, Instant now) {
  signal.available = online;
  if (!online) {
    signal.live = false;
    lose(signal, Quality::bad, DeviceStatus::failure, Why::said_unavailable, now);
  } else if (instrument.on_change && signal.seen && signal.why != Why::retained_only &&
             !signal.live) {
    take_live(instrument, signal, signal.value, now, now);
  } else if (signal.why == Why::said_unavailable) {
    signal.why = Why::awaiting_after_link;
  }
}

// After a start or a link loss nothing is known to be fresh. What an instrument that speaks on
// change said last is kept, to be good again when its availability is.
void begin_anew(const Instrument& instrument, Signal& signal, bool after_start, Instant now) {
  const bool keeps_value =
      instrument.on_change && instrument.has_availability && signal.quality == Quality::good;
  if (after_start && !keeps_value) {
    const auto refused = signal.refused;
    signal = Signal{};
    signal.refused = refused;
  }
  lose(signal, Quality::bad, DeviceStatus::check_function, Why::awaiting_after_link, now);
  signal.live = false;
  signal.refused_in_a_row = 0;
}

void watch_silence(const Instrument& instrument, Signal& signal, const state::Circumstances& known,
                   Wake& wake) {
  if (!known.link_up || mutant(Mutant::stale_never)) return;
  const Duration patience = stale_after(instrument);
  const Instant overdue = (signal.live ? signal.received : known.link_since) + patience;
  if (known.now < overdue) return wake.by(overdue);
  if (signal.live && signal.why != Why::stale) {
    lose(signal, Quality::bad, DeviceStatus::failure, Why::stale, known.now);
  } else if (signal.why == Why::awaiting_after_link || signal.why == Why::retained_only) {
    lose(signal, Quality::bad, DeviceStatus::failure, Why::never_seen, known.now);
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
      begin_anew(room.instruments[i], signals[i], started, now);
    }
  } else if (const auto* reading = std::get_if<Reading>(&event.what)) {
    const auto i = reading->instrument;
    take(room.instruments[i], signals[i], *reading, now);
  } else if (const auto* refusal = std::get_if<Refusal>(&event.what)) {
    refuse(signals[refusal->instrument], Why::not_a_reading, now);
  } else if (const auto* availability = std::get_if<Availability>(&event.what)) {
    const auto i = availability->instrument;
    set_available(room.instruments[i], signals[i], availability->online, now);
  }
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    watch_silence(room.instruments[i], signals[i], known, wake);
  }
}

}  // namespace tidewright::signal
