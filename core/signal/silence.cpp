#include "core/signal/silence.hpp"

#include "core/base/mutant.hpp"
#include "core/signal/age.hpp"
#include "core/signal/quality.hpp"

namespace tidewright::signal {

namespace {

// A restart for a new version, or the broker's. [choice]
constexpr Duration deaf_longest = std::chrono::minutes{5};

}  // namespace

void begin_anew(const room::Instrument& instrument, state::Signal& signal,
                const state::Circumstances& known, bool after_start) {
  const bool deaf = known.now - known.unheard_since > deaf_longest;
  if (deaf && instrument.on_change && !is_danger(instrument.quantity, signal.value)) {
    signal.seen = false;
  }
  const bool keeps_value = instrument.on_change && instrument.has_availability && signal.seen &&
                           signal.quality == Quality::good;
  if (after_start && !keeps_value) {
    const auto refused = signal.refused;
    signal = state::Signal{};
    signal.refused = refused;
  }
  lose(signal, Quality::bad, DeviceStatus::check_function, Why::awaiting_after_link, known.now);
  signal.live = false;
  signal.refused_in_a_row = 0;
  signal.befores = 0;
}

bool set_available(const room::Instrument& instrument, state::Signal& signal, bool online,
                   Instant now) {
  signal.available = online;
  if (!online) {
    signal.live = false;
    lose(signal, Quality::bad, DeviceStatus::failure, Why::said_unavailable, now);
    return false;
  }
  if (instrument.on_change && signal.seen && signal.why != Why::retained_only && !signal.live) {
    return true;
  }
  if (signal.why == Why::said_unavailable) signal.why = Why::awaiting_after_link;
  return false;
}

void watch_silence(const room::Instrument& instrument, state::Signal& signal,
                   const state::Circumstances& known, Wake& wake) {
  if (!known.link_up || mutant(Mutant::stale_never)) return;
  const Duration patience = stale_after(instrument);
  const Instant overdue = (signal.live ? signal.received : known.link_since) + patience;
  if (known.now < overdue) return wake.by(overdue);
  if (signal.live && signal.why != Why::stale) {
    lose(signal, Quality::bad, DeviceStatus::failure, Why::stale, known.now);
    signal.befores = 0;
  } else if (signal.why == Why::awaiting_after_link || signal.why == Why::retained_only) {
    lose(signal, Quality::bad, DeviceStatus::failure, Why::never_seen, known.now);
  }
}

}  // namespace tidewright::signal
