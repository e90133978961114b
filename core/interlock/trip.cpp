#include "core/interlock/trip.hpp"

#include <algorithm>

#include "core/base/mutant.hpp"

namespace tidewright::interlock {
namespace {

using namespace std::chrono_literals;
using room::ActuatorIndex;
using room::Role;

// What one row does in this pass.
struct Outcome {
  Cause first;             // the first reason, if it stands for anything
  std::uint8_t roles = 0;  // a bit for each that it forces off
  bool stops = false;      // one of them was on
};

void strengthen(Held& held, Hold hold, const Reason& why) {
  if (hold <= held.hold) return;
  held = {hold, why};
}

// A cause for the whole room holds its roles also where nothing of them is installed: its latch
// asks for a person's look all the same.
void mark_roles(const Row& row, Outcome& outcome) {
  for (std::size_t i = 0; i < room::role_count; ++i) {
    const auto role = static_cast<Role>(i);
    if (row.holds[role] >= Hold::force_off) outcome.roles |= state::bit(role);
  }
}

// What was started under a bypass does not outlast it, also where its cause forbids starts only.
Hold hold_of(const Row& row, Role role, bool bypass_ends) {
  const Hold hold = row.holds[role];
  return bypass_ends && hold == Hold::inhibit ? Hold::force_off : hold;
}

Outcome apply(const Row& row, const picture::Picture& picture, const state::Findings& findings,
              bool bypass_ends, HeldActuators& held) {
  Outcome outcome;
  if (row.stands != nullptr) {
    outcome.first = row.stands(picture, findings);
    if (!outcome.first) return outcome;
    mark_roles(row, outcome);
  }
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<ActuatorIndex>(n);
    const Role role = picture.room.actuators[n].role;
    const Hold hold = hold_of(row, role, bypass_ends);
    if (hold == Hold::none) continue;
    const Cause why = row.stands != nullptr ? outcome.first : row.stands_for(picture, findings, i);
    if (!why) continue;
    strengthen(held[i], hold, *why);
    if (!outcome.first) outcome.first = why;
    if (hold < Hold::force_off) continue;
    outcome.roles |= state::bit(role);
    outcome.stops = outcome.stops || picture.drives[n].on;
  }
  return outcome;
}

std::size_t stops_within_a_day(const state::Latch& latch, Instant now) {
  return static_cast<std::size_t>(
      std::count_if(latch.stops.begin(), latch.stops.end(),
                    [now](Instant stop) { return stop != long_ago && now - stop < 24h; }));
}

// Whether this pass of the row must latch.
bool must_latch(const Row& row, bool newly, const Outcome& outcome, Instant now,
                state::Latch& latch) {
  if (trips(row)) return true;
  if (row.latches_at_stop == 0 || !newly || !outcome.stops) return false;
  std::shift_right(latch.stops.begin(), latch.stops.end(), 1);
  latch.stops[0] = now;
  return stops_within_a_day(latch, now) >= row.latches_at_stop;
}

void hold_latched(const picture::Picture& picture, const state::Latches& latches,
                  HeldActuators& held) {
  for (std::size_t rule = 0; rule < room::rule_count; ++rule) {
    if (!latches.items[rule].set) continue;
    const Reason why{Why::latched, no_subject, {static_cast<float>(rule)}};
    for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
      if (!state::holds(latches.items[rule], picture.room.actuators[n].role)) continue;
      strengthen(held[static_cast<ActuatorIndex>(n)], Hold::trip, why);
    }
  }
}

}  // namespace

HeldActuators trip(const picture::Picture& picture, const state::Findings& findings,
                   const state::Bypasses& bypasses, state::Latches& latches) {
  const bool none_before = std::none_of(latches.items.begin(), latches.items.end(),
                                        [](const state::Latch& latch) { return latch.set; });
  HeldActuators held;
  for (const Row& row : matrix()) {
    const bool bypassed = state::find(bypasses, row.id, picture.now) != nullptr;
    const bool bypass_ends = state::ends(bypasses, row.id, picture.now);
    const Outcome outcome = bypassed ? Outcome{} : apply(row, picture, findings, bypass_ends, held);
    if (!row.rule) continue;
    state::Latch& latch = latches[*row.rule];
    const bool stands = outcome.first.has_value();
    const bool newly = stands && !latch.stands;
    latch.stands = stands;
    if (mutant(Mutant::resets_itself) && !stands) latch.set = false;
    if (stands && latch.set) latch.roles |= outcome.roles;
    if (!stands || latch.set || !must_latch(row, newly, outcome, picture.now, latch)) continue;
    latch.set = true;
    latch.first = none_before && !mutant(Mutant::first_cause_lost);
    latch.since = picture.now;
    latch.cause = *outcome.first;
    latch.roles = outcome.roles;
    held.latched_anew = true;
  }
  hold_latched(picture, latches, held);
  return held;
}

}  // namespace tidewright::interlock
