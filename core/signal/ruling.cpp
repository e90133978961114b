#include "core/signal/ruling.hpp"

namespace tidewright::signal {
namespace {

using room::Quantity;

double danger(Quantity quantity, double value) {
  const bool low_is_danger = quantity == Quantity::temperature || quantity == Quantity::pressure;
  return low_is_danger ? -value : value;
}

// The most dangerous of those whose rank is the highest there is.
template <class Rank>
std::optional<room::InstrumentIndex> best(const room::Room& room, const state::Signals& signals,
                                          Quantity quantity, room::Place place, Rank rank_of) {
  std::optional<room::InstrumentIndex> best;
  int best_rank = -1;
  for (std::size_t i = 0; i < room.instruments.size(); ++i) {
    const room::Instrument& instrument = room.instruments[i];
    if (instrument.quantity != quantity || instrument.place != place) continue;
    const int rank = rank_of(signals[i]);
    const bool more = best && rank > 0 &&
                      danger(quantity, signals[i].value) > danger(quantity, signals[*best].value);
    if (rank < best_rank || (rank == best_rank && !more)) continue;
    best = static_cast<room::InstrumentIndex>(i);
    best_rank = rank;
  }
  return best;
}

bool says_something(const state::Signal& signal) {
  return signal.seen && signal.quality != Quality::bad;
}

}  // namespace

std::optional<room::InstrumentIndex> ruling(const room::Room& room, const state::Signals& signals,
                                            Quantity quantity, room::Place place) {
  return best(room, signals, quantity, place, [](const state::Signal& signal) {
    if (!says_something(signal)) return 0;
    return signal.quality == Quality::good ? 2 : 1;
  });
}

std::optional<room::InstrumentIndex> most_dangerous(const room::Room& room,
                                                    const state::Signals& signals,
                                                    Quantity quantity, room::Place place) {
  return best(room, signals, quantity, place, [](const state::Signal& signal) {
    if (says_something(signal)) return 2;
    return signal.seen ? 1 : 0;
  });
}

}  // namespace tidewright::signal
