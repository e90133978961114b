#include "core/ledger/fill.hpp"

#include <algorithm>

#include "core/signal/ruling.hpp"

namespace tidewright::ledger {
namespace {

// From the level to STOP; where nothing is known of the level, the whole vat is meant.
Litres litres_to_go(const Sources& from) {
  const auto& vat = from.room.vat;
  if (!vat) return Litres{0};
  const auto gauge =
      signal::ruling(from.room, from.signals, room::Quantity::level, room::Place::vat);
  if (!gauge || from.signals[*gauge].quality != Quality::good || !vat->stop_at) {
    return vat->capacity;
  }
  return std::max(Litres{0}, *vat->stop_at - Litres{from.signals[*gauge].value});
}

// A fill of fewer gauge steps says little: one may be hidden at either end. [choice]
constexpr double steps_to_learn_from = 10;

// The mean of the first fills; from then on the latest counts for as much as one of them.
void learn(const Sources& from, const state::Fill& fill, state::LearnedFlow& learned) {
  const auto gauge = room::find(from.room, room::Quantity::level, room::Place::vat);
  if (!gauge || from.make_water.why.why != Why::reached_stop || fill.expected <= Litres{0}) return;
  const double step = from.room.instruments[*gauge].step;
  if (fill.gained < Litres{steps_to_learn_from * step}) return;
  if (learned.fills < state::learned_from) ++learned.fills;
  learned.share += (fill.gained / fill.expected - learned.share) / learned.fills;
}

}  // namespace

void post_fill(const Sources& from, const LevelMove& move, Litres flowed, Duration worked,
               state::Fill& fill, state::LearnedFlow& learned) {
  const auto driving = room::driving(from.room);
  if (!driving || !state::asks_for_water(from.make_water.demand)) {
    if (fill.under_way) learn(from, fill, learned);
    fill.under_way = false;
    return;
  }
  if (!fill.under_way) {
    if (!from.drives[*driving].on) return;
    fill = {};
    fill.under_way = true;
    fill.began = from.circumstances.now;
    fill.to_go = litres_to_go(from);
  }
  // A fill that was stopped for being flat or overlong is tried again as a new one.
  const state::Drive& drive = from.drives[*driving];
  if (!drive.on && drive.why.why == Why::level_flat) fill.flat = Duration{0};
  if (!drive.on && drive.why.why == Why::fill_overlong) fill.under_way = false;
  fill.worked += worked;
  fill.flat += worked;
  fill.expected += flowed;
  fill.gained += move.risen;
  fill.drawn += move.fallen;
  if (move.risen > Litres{0}) fill.flat = Duration{0};
}

}  // namespace tidewright::ledger
