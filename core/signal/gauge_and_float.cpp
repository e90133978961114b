#include "core/signal/gauge_and_float.hpp"

#include "core/signal/quality.hpp"

namespace tidewright::signal {

void compare_gauge_with_float(const Beside& beside, state::Signals& signals) {
  const room::Room& room = beside.room;
  const auto high_high = room::find(room, room::Quantity::float_switch, room::Place::vat_high_high);
  if (!high_high || !room.vat || !room.vat->stop_at) return;
  const bool lifted = signals[*high_high].seen && signals[*high_high].value >= 0.5;
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    const room::Instrument& instrument = room.instruments[i];
    if (instrument.quantity != room::Quantity::level || instrument.place != room::Place::vat) {
      continue;
    }
    state::Signal& gauge = signals[i];
    if (lifted && gauge.seen && gauge.value < room.vat->stop_at->value) {
      doubt(gauge, Why::below_the_float, *high_high, gauge.value, 0, beside.circumstances.now);
    } else {
      trust(gauge, Why::below_the_float);
    }
  }
}

}  // namespace tidewright::signal
