#include "core/ledger/post.hpp"

#include <optional>

#include "core/base/mutant.hpp"
#include "core/ledger/balance.hpp"
#include "core/ledger/fill.hpp"
#include "core/ledger/flow.hpp"
#include "core/ledger/gauge.hpp"
#include "core/ledger/level.hpp"
#include "core/ledger/resin.hpp"
#include "core/ledger/samples.hpp"
#include "core/ledger/upkeep.hpp"
#include "core/ledger/working.hpp"

namespace tidewright::ledger {
namespace {

// Whether the purifier runs, and its water runs into the vat.
bool fills(const room::Room& room, const state::Ledger& ledger) {
  const auto driving = room::driving(room);
  if (!driving || !ledger.working[*driving].on) return false;
  const auto valve = room::find(room, room::Role::fill_valve);
  const auto divert = room::find(room, room::Role::divert_valve);
  return (!valve || ledger.working[*valve].on) && (!divert || !ledger.working[*divert].on);
}

}  // namespace

void post(const Sources& from, const Event& event, state::Ledger& ledger) {
  const Instant now = from.circumstances.now;
  // What happened while the daemon was away was not seen and is not booked.
  if (std::holds_alternative<Started>(event.what)) {
    ledger.posted = now;
    ledger.noise.fresh = 0;
    if (mutant(Mutant::totals_begin_anew)) ledger.made = ledger.flowed = Litres{0};
    if (mutant(Mutant::day_limit_forgotten_at_restart)) {
      for (state::Working& working : ledger.working) working.day = Duration{0};
    }
  }
  const Duration elapsed = now - ledger.posted;
  ledger.posted = now;

  const auto driving = room::driving(from.room);
  const bool worked = fills(from.room, ledger);
  const Celsius temperature = water_temperature(from.room, from.signals).value;
  const Litres flowed{worked ? flow_expected(from.room, temperature).value * hours(elapsed) : 0};
  post_working(from, elapsed, ledger);
  ledger.flowed += flowed;

  const std::optional<Litres> reading = new_level(from, event);
  if (reading) post_gauge_noise(from, *reading, ledger.noise);
  const LevelMove move = post_level(from, reading, ledger.noise, ledger.level);
  const bool has_gauge = room::find(from.room, room::Quantity::level, room::Place::vat).has_value();
  const Litres made = !has_gauge ? flowed : worked ? move.risen : Litres{0};
  ledger.made += made;
  post_resin(from, made, ledger);
  if (worked && !ledger.working[*driving].on) ledger.level.at_off = ledger.level.peak;
  post_fill(from, move, flowed, worked ? elapsed : Duration{0}, ledger.fill, ledger.learned);
  post_balance(from, event, elapsed, reading, move, fills(from.room, ledger), ledger);
  post_samples(from, event, ledger);
  // Where nothing is switched every rise is fresh water.
  post_upkeep(from, event, driving ? made : move.risen, ledger);
}

}  // namespace tidewright::ledger
