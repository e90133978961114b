#include "core/signal/twins.hpp"

#include <algorithm>
#include <cmath>

#include "core/signal/quality.hpp"

namespace tidewright::signal {
namespace {

// Whether they differ by at most that share of what they may differ by.
bool agree(const room::Instrument& instrument, const room::Instrument& twin, double a, double b,
           double share_of_it) {
  const double share = std::max(instrument.agrees_share, twin.agrees_share);
  const double allowed = std::max(
      {instrument.agrees_within, twin.agrees_within, share * std::max(std::abs(a), std::abs(b))});
  return std::abs(a - b) <= share_of_it * (allowed + instrument.step + twin.step);
}

}  // namespace

void compare_twins(const Beside& beside, state::Signals& signals, Wake& wake) {
  const Instant now = beside.circumstances.now;
  for (std::size_t i = 0; i < beside.room.instruments.size(); ++i) {
    const room::Instrument& instrument = beside.room.instruments[i];
    if (instrument.twin_of == no_subject) continue;
    const room::Instrument& twin = beside.room.instruments[instrument.twin_of];
    state::Signal& a = signals[i];
    state::Signal& b = signals[instrument.twin_of];
    // While one of them is silent, what they last said of each other stands.
    if (!is_sound(a) || !is_sound(b)) {
      a.differs = never;
      continue;
    }
    // Doubted twins must come twice as near, or noise at the limit would tell them right and wrong
    // by turns.
    const bool doubted = a.doubt == Why::twins_disagree;
    if (agree(instrument, twin, a.value, b.value, doubted ? 0.5 : 1)) {
      a.differs = never;
      trust(a, Why::twins_disagree);
      trust(b, Why::twins_disagree);
      continue;
    }
    a.differs = std::min(a.differs, now);
    // A quick change reaches one of them later than the other.
    const Instant settled = a.differs + std::max(stale_after(instrument), stale_after(twin));
    if (now < settled) {
      wake.by(settled);
      continue;
    }
    doubt(a, Why::twins_disagree, instrument.twin_of, a.value, b.value, now);
    doubt(b, Why::twins_disagree, static_cast<std::uint8_t>(i), b.value, a.value, now);
  }
}

}  // namespace tidewright::signal
