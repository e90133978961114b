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

bool transfers(const room::Room& room, const state::Ledger& ledger) {
  const auto transfer = room::find(room, room::Role::transfer_pump);
  return transfer && ledger.working[*transfer].on;
}

// Standing or running, as it has been for a while, under a gauge that still speaks.
bool goes_on(const room::Instrument& gauge, bool standing, Instant now,
             const state::Stretch& stretch) {
  return standing == stretch.standing && now - stretch.held_at <= room::stale_after(gauge);
}

void judge(const Sources& from, const room::Instrument& gauge, state::Ledger& ledger) {
  state::Balance& balance = ledger.balance;
  const bool standing = balance.stretch.standing;
  const LevelError error = level_error(gauge, standing, ledger.noise);
  const Duration slice = slice_of(gauge, standing);
  if (standing) {
    post_leak(from.room, error, slice, from.circumstances.now, balance);
  } else {
    post_shortfall(from, error, slice, ledger.learned, balance);
  }
}

}  // namespace

void post_balance(const Sources& from, const Event& event, Duration elapsed,
                  std::optional<Litres> reading, const LevelMove& move, bool fills,
                  state::Ledger& ledger) {
  const auto driving = room::driving(from.room);
  const auto ruling =
      signal::ruling(from.room, from.signals, room::Quantity::level, room::Place::vat);
  if (!driving || !ruling || !from.room.vat) return;
  const room::Instrument& gauge = from.room.instruments[*ruling];
  const Instant now = from.circumstances.now;
  state::Stretch& stretch = ledger.balance.stretch;
  state::Draws& draws = ledger.balance.draws;

  const bool ours = transfers(from.room, ledger);
  if (ours) draws.ours = now;
  if (now - draws.ours >= transfer_shows_for) {
    post_draws(move, ledger.balance.habit.usual, now, *from.room.vat, draws);
  }

  const bool standing = !ledger.working[*driving].on && !from.drives[*driving].on && !ours;
  const bool neither = !standing && !fills;
  if (std::holds_alternative<Started>(event.what) || neither ||
      !goes_on(gauge, standing, now, stretch)) {
    stretch = {};
    stretch.standing = standing;
    stretch.began = now;
  } else if (now - stretch.began >= settles_after && post_stretch(gauge, elapsed, stretch)) {
    judge(from, gauge, ledger);
  }
  if (!reading) return;
  stretch.held = *reading;
  stretch.held_at = now;
}

}  // namespace tidewright::ledger
