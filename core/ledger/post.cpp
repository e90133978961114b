#include "core/ledger/post.hpp"

#include "core/ledger/fill.hpp"
#include "core/ledger/flow.hpp"
#include "core/ledger/level.hpp"
#include "core/ledger/resin.hpp"
#include "core/ledger/samples.hpp"
#include "core/ledger/upkeep.hpp"
#include "core/ledger/working.hpp"

namespace tidewright::ledger {

void post(const Sources& from, const Event& event, state::Ledger& ledger) {
  const Instant now = from.circumstances.now;
  // What happened while the daemon was away was not seen and is not booked.
  if (std::holds_alternative<Started>(event.what)) ledger.posted = now;
  const Duration elapsed = now - ledger.posted;
  ledger.posted = now;

  const auto driving = room::driving(from.room);
  const bool worked = driving && ledger.working[*driving].on;
  const Celsius temperature = water_temperature(from.room, from.signals).value;
  const Litres flowed{worked ? flow_expected(from.room, temperature).value * hours(elapsed) : 0};
  post_working(from, elapsed, ledger);
  ledger.flowed += flowed;

  const LevelMove move = post_level(from, ledger.level);
  const bool has_gauge = room::find(from.room, room::Quantity::level, room::Place::vat).has_value();
  const Litres made = !has_gauge ? flowed : worked ? move.risen : Litres{0};
  ledger.made += made;
  post_resin(from, made, ledger);
  if (worked && !ledger.working[*driving].on) ledger.level.at_off = ledger.level.peak;
  post_fill(from, move, flowed, worked ? elapsed : Duration{0}, ledger.fill, ledger.learned);
  post_samples(from, event, ledger);
  // Where nothing is switched every rise is fresh water.
  post_upkeep(from, event, driving ? made : move.risen, ledger);
}

}  // namespace tidewright::ledger
