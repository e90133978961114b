#include "core/signal/age.hpp"

#include "core/base/mutant.hpp"

namespace tidewright::signal {

using room::Quantity;

Taken age_of(const room::Instrument& instrument, const state::Signal& signal,
             const Reading& reading, Instant now) {
  const bool dated_and_fresh = reading.arrival == Arrival::dated && reading.taken <= now &&
                               now - reading.taken < stale_after(instrument) &&
                               instrument.quantity != Quantity::wetness;
  const bool is_live = reading.arrival == Arrival::live || mutant(Mutant::retained_dry_believed);
  if (is_live && reading.taken == long_ago) return {Age::fresh, now};
  if (!is_live && !dated_and_fresh) return {Age::unknown, reading.taken};
  // What is not newer than the last one known, by the source's own time, changes nothing.
  const bool newer = reading.taken > signal.received || mutant(Mutant::older_accepted);
  if (newer) return {Age::fresh, reading.taken};
  return {Age::late, reading.taken};
}

bool is_danger(Quantity quantity, double value) {
  const bool is_switch = quantity == Quantity::wetness || quantity == Quantity::float_switch ||
                         quantity == Quantity::feedback;
  return is_switch && value >= 0.5;
}

}  // namespace tidewright::signal
