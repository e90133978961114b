#include "core/signal/balance.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/signal/quality.hpp"
#include "core/signal/water_meter.hpp"

namespace tidewright::signal {
namespace {

using room::Place;

constexpr Litres stretch{20};          // [choice]
constexpr double share_allowed = 0.2;  // three cheap meters of some 5 to 10 % each [choice]

}  // namespace

void balance_flows(const Beside& beside, state::Signals& signals, state::Comparison& comparison) {
  const Instant now = beside.circumstances.now;
  std::array<std::uint8_t, state::metered_places.size()> meters{};
  double steps = 0;
  for (std::size_t k = 0; k < meters.size(); ++k) {
    const auto meter = water_meter(beside.room, signals, state::metered_places[k]);
    if (!meter) return;
    if (!is_sound(signals[*meter])) {
      comparison.balance.open = false;
      return;
    }
    meters[k] = *meter;
    const room::Instrument& instrument = beside.room.instruments[*meter];
    if (instrument.quantity == room::Quantity::water_count) steps += instrument.step;
  }
  const auto& water = comparison.water;
  const Litres feed = water[metered(Place::feed)].passed;
  const Litres product = water[metered(Place::product)].passed;
  const Litres concentrate = water[metered(Place::concentrate)].passed;
  state::BalanceWindow& window = comparison.balance;
  if (!window.open) {
    window = {.open = true, .feed = feed, .product = product, .concentrate = concentrate};
    return;
  }
  const Litres in = feed - window.feed;
  const Litres out = product - window.product + (concentrate - window.concentrate);
  if (std::max(in, out) < stretch) return;
  const bool balanced =
      std::abs((in - out).value) <= share_allowed * std::max(in, out).value + steps;
  for (const std::uint8_t meter : meters) {
    if (balanced) {
      trust_all_like(beside.room, signals, meter, Why::flows_unbalanced);
    } else {
      doubt_all_like(beside.room, signals, meter, Why::flows_unbalanced, no_subject, in.value,
                     out.value, now);
    }
  }
  window.open = false;
}

}  // namespace tidewright::signal
