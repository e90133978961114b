#include "core/ledger/balance.hpp"

#include "core/ledger/draws.hpp"
#include "core/ledger/leak.hpp"
#include "core/ledger/shortfall.hpp"
#include "core/ledger/stretch.hpp"
#include "core/signal/ruling.hpp"

namespace tidewright::ledger {
namespace {

using namespace std::chrono_literals;

// The membrane's housing empties itself after OFF; pressure and flow come up after ON. [choice]
constexpr Duration settles_after = 5min;

// Its own transfer is seen in the smoothed level for so long. [choice]
constexpr Duration transfer_shows_for = 15min;

void begin(bool standing, Instant now, state::Stretch& stretch) {
  stretch = {};
  stretch.standing = standing;
  stretch.began = now;
}

bool transfers(const Sources& from, const state::Ledger& ledger) {
  const auto transfer = room::find(from.room, room::Role::transfer_pump);
  return transfer && ledger.working[*transfer].on;
}

}  // namespace

void post_balance(const Sources& from, const Event& event, Duration elapsed,
                  std::optional<Litres> reading, const LevelMove& move, bool fills,
                  state::Ledger& ledger) {
  const auto driving = room::driving(from.room);
  const auto gauge =
      signal::ruling(from.room, from.signals, room::Quantity::level, room::Place::vat);
  if (!driving || !gauge) return;
  const Instant now = from.circumstances.now;
  const room::Instrument& instrument = from.room.instruments[*gauge];
  state::Balance& balance = ledger.balance;
  state::Stretch& stretch = balance.stretch;

  const bool ours = transfers(from, ledger);
  if (ours) balance.draws.ours = now;
  if (now - balance.draws.ours >= transfer_shows_for) {
    post_draws(move, now, *from.room.vat, balance.draws);
  }
  const bool standing = !ledger.working[*driving].on && !from.drives[*driving].on && !ours;
  const bool neither = !standing && !fills;
  if (std::holds_alternative<Started>(event.what) || neither || standing != stretch.standing) {
    begin(standing, now, stretch);
  }
  if (now - stretch.began < settles_after) return;

  const bool good = from.signals[*gauge].quality == Quality::good;
  const bool full =
      good && stretch.holds && post_stretch(instrument, stretch.held, elapsed, false, stretch);
  if (full) {
    const LevelError error = level_error(instrument, stretch.standing, ledger.noise);
    const Duration slice = slice_of(instrument, stretch.standing);
    if (standing) {
      take_out_draw(error, stretch);
      post_leak(from.room, error, slice, balance);
    } else {
      post_shortfall(from, error, slice, ledger.learned, balance);
    }
  }
  if (!reading || move.doubtful) return;
  if (move.leapt && stretch.holds) {
    post_stretch(instrument, stretch.held, Duration{0}, true, stretch);
  }
  stretch.held = *reading;
  stretch.holds = true;
}

}  // namespace tidewright::ledger
