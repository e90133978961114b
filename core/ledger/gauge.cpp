#include "core/ledger/gauge.hpp"

#include <algorithm>
#include <cmath>

#include "core/signal/ruling.hpp"

namespace tidewright::ledger {
namespace {

// The mean size of a - 2b + c where a, b, c are normal with standard deviation 1: its own standard
// deviation is the root of 6, its mean size the root of 2 / pi times that.
constexpr double mean_size_of_bend = 1.9544;
constexpr double outlier = 4;
// Readings to remember: four hours of one a minute. [choice]
constexpr std::uint8_t memory = 250;

}  // namespace

std::optional<Litres> new_level(const Sources& from, const Event& event) {
  const auto* reading = std::get_if<Reading>(&event.what);
  const auto gauge =
      signal::ruling(from.room, from.signals, room::Quantity::level, room::Place::vat);
  if (reading == nullptr || !gauge || reading->instrument != *gauge) return std::nullopt;
  const state::Signal& signal = from.signals[*gauge];
  const Instant measured = reading->taken == long_ago ? from.circumstances.now : reading->taken;
  const bool taken_up = signal.quality == Quality::good && signal.received == measured;
  return taken_up ? std::optional{Litres{signal.value}} : std::nullopt;
}

void post_gauge_noise(const Sources& from, Litres reading, state::GaugeNoise& noise) {
  if (noise.fresh == 2) {
    const auto gauge =
        signal::ruling(from.room, from.signals, room::Quantity::level, room::Place::vat);
    const double usual =
        std::max(mean_size_of_bend * noise.spread.value, from.room.instruments[*gauge].step);
    const double bend = std::abs((reading - 2 * noise.last + noise.before).value);
    const Litres scatter{std::min(bend, outlier * usual) / mean_size_of_bend};
    if (noise.count < memory) ++noise.count;
    noise.spread += (scatter - noise.spread) / noise.count;
  }
  noise.before = noise.last;
  noise.last = reading;
  noise.fresh = static_cast<std::uint8_t>(std::min(2, noise.fresh + 1));
}

}  // namespace tidewright::ledger
