#include "core/ledger/samples.hpp"

#include <algorithm>

#include "core/ledger/feed.hpp"
#include "core/signal/ruling.hpp"

namespace tidewright::ledger {
namespace {

// Samples of one judged stretch; state::Samples holds two such stretches.
constexpr int slices = 4;

// Water that stands behind a closed float takes up salts; it says nothing of the resin.
bool flows(const state::Working& working, const state::Ledger& ledger) {
  return working.on && working.turning && !ledger.balance.stall.found;
}

// Without a switched pump nothing is known of running, and every reading counts.
bool is_settled(const Sources& from, const state::Ledger& ledger, Duration settles) {
  const auto driving = room::driving(from.room);
  return !driving ||
         (flows(ledger.working[*driving], ledger) && ledger.working[*driving].run >= settles);
}

// A product above zero is believed of a doubtful meter too; a pure one never is.
bool is_believed(const room::Purifier& purifier, const room::Instrument& instrument,
                 const state::Signal& signal) {
  if (signal.quality == Quality::good) return true;
  return signal.quality == Quality::uncertain && instrument.place == room::Place::product &&
         signal.value >= purifier.notify_at.value;
}

void add(state::Samples& samples, const state::Sample& sample, const room::Room& room) {
  if (samples.count > 0) {
    const state::Sample& newest = samples.items[0];
    const double litres_apart = static_cast<double>(sample.litres - newest.litres);
    const bool time_for_it = sample.at - newest.at >= room.purifier->judged_over / slices;
    const bool litres_for_it =
        !room::driving(room) || litres_apart >= room.purifier->judged_litres.value / slices;
    if (!time_for_it || !litres_for_it) return;
  }
  std::shift_right(samples.items.begin(), samples.items.end(), 1);
  samples.items[0] = sample;
  if (samples.count < samples.items.size()) ++samples.count;
}

}  // namespace

void post_samples(const Sources& from, const Event& event, state::Ledger& ledger) {
  const auto* reading = std::get_if<Reading>(&event.what);
  if (reading == nullptr || !from.room.purifier) return;
  const room::Instrument& instrument = from.room.instruments[reading->instrument];
  const state::Signal& signal = from.signals[reading->instrument];
  const bool taken_up = is_believed(*from.room.purifier, instrument, signal) &&
                        signal.received == from.circumstances.now;
  if (instrument.quantity != room::Quantity::dissolved_solids || !taken_up) return;

  const auto rules = signal::ruling(from.room, from.signals, instrument.quantity, instrument.place);
  if (rules != reading->instrument) return;

  const room::Purifier& purifier = *from.room.purifier;
  const state::Sample sample{from.circumstances.now, static_cast<float>(signal.value),
                             static_cast<float>(ledger.flowed.value)};
  if (instrument.place == room::Place::product &&
      is_settled(from, ledger, purifier.product_flush)) {
    add(ledger.product, sample, from.room);
  } else if (instrument.place == room::Place::permeate &&
             is_settled(from, ledger, purifier.permeate_settles)) {
    add(ledger.permeate, sample, from.room);
  } else if (instrument.place == room::Place::feed &&
             is_settled(from, ledger, purifier.permeate_settles)) {
    follow_feed({signal.value}, from.circumstances.now, ledger.feed);
  }
}

}  // namespace tidewright::ledger
