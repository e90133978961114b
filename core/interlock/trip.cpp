#include "core/interlock/trip.hpp"

#include <algorithm>

#include "core/base/mutant.hpp"

namespace tidewright::interlock {
namespace {

using namespace std::chrono_literals;

bool any_on(const picture::Picture& picture) {
  return std::any_of(picture.drives.begin(), picture.drives.end(),
                     [](const state::Drive& drive) { return drive.on; });
}

std::size_t stops_within_a_day(const state::Latch& latch, Instant now) {
  return static_cast<std::size_t>(
      std::count_if(latch.stops.begin(), latch.stops.end(),
                    [now](Instant stop) { return stop != long_ago && now - stop < 24h; }));
}

// Whether this pass of the row must latch.
bool must_latch(const Row& row, bool newly, const picture::Picture& picture, state::Latch& latch) {
  if (hold_of(row, room::Role::booster_pump) == Hold::trip) return true;
  if (row.latches_at_stop == 0 || !newly || !any_on(picture)) return false;
  std::shift_right(latch.stops.begin(), latch.stops.end(), 1);
  latch.stops[0] = picture.now;
  return stops_within_a_day(latch, picture.now) >= row.latches_at_stop;
}

void strengthen(Held& held, Hold hold, const Reason& why) {
  if (hold <= held.hold) return;
  held = {hold, why};
}

void hold_latched(const state::Latches& latches, HeldRoles& roles) {
  for (std::size_t i = 0; i < room::rule_count; ++i) {
    if (!latches.items[i].set) continue;
    const Reason why{Why::latched, no_subject, {static_cast<float>(i)}};
    strengthen(roles.booster_pump, Hold::trip, why);
    strengthen(roles.feed_valve, Hold::trip, why);
  }
}

}  // namespace

const Held& held(const HeldRoles& roles, room::Role role) {
  return role == room::Role::feed_valve ? roles.feed_valve : roles.booster_pump;
}

HeldRoles trip(const picture::Picture& picture, const state::Findings& findings,
               state::Latches& latches) {
  const bool none_before = std::none_of(latches.items.begin(), latches.items.end(),
                                        [](const state::Latch& latch) { return latch.set; });
  HeldRoles roles;
  for (const Row& row : matrix()) {
    const auto why = row.stands(picture, findings);
    if (why) {
      strengthen(roles.booster_pump, row.holds.booster_pump, *why);
      strengthen(roles.feed_valve, row.holds.feed_valve, *why);
    }
    if (!row.rule) continue;
    state::Latch& latch = latches[*row.rule];
    const bool newly = why && !latch.stands;
    latch.stands = why.has_value();
    if (mutant(Mutant::resets_itself) && !why) latch.set = false;
    if (!why || latch.set || !must_latch(row, newly, picture, latch)) continue;
    latch.set = true;
    latch.first = none_before && !mutant(Mutant::first_cause_lost);
    latch.since = picture.now;
    latch.cause = *why;
    roles.latched_anew = true;
  }
  hold_latched(latches, roles);
  return roles;
}

}  // namespace tidewright::interlock
