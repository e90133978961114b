#include "core/nights/witness.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tidewright::nights {
namespace {

bool possible(const room::Instrument& instrument, double value) {
  return std::isfinite(value) && value >= instrument.gross_low && value <= instrument.gross_high;
}

constexpr Duration confirmed_within = std::chrono::seconds{30};
// What speaks on change may have spoken while the daemon was deaf for longer than this.
constexpr Duration deaf_longest = std::chrono::minutes{6};
// Of a person who does not say for how long.
constexpr Duration usual_bypass = std::chrono::minutes{30};

bool is_switch(room::Quantity quantity) {
  return quantity == room::Quantity::wetness || quantity == room::Quantity::float_switch ||
         quantity == room::Quantity::feedback;
}

}  // namespace

void Witness::see(const rehearsal::PretendRoom& pretend) {
  now = pretend.now();
  const bool is_wet = pretend.floor_is_wet();
  if (is_wet != wet) wet_since = is_wet ? now : never;
  if (is_wet && !wet) ++wet_spells;
  wet = is_wet;
  // A gauge may show a step more than there is.
  const auto gauge = room::find(*room, room::Quantity::level, room::Place::vat);
  const double step = gauge ? 3 * room->instruments[*gauge].step : 0;
  const double mark = full_mark(pretend);
  const double holding = pretend.works().vat().holding().value;
  if (mark > 0 && holding >= mark - step) full_at = now;
  const bool low = room->vat && room->vat->start_below &&
                   holding < room->vat->start_below->value - 0.05 * room->vat->capacity.value;
  const auto& mixing = pretend.works().mixing();
  bare_since = mixing && mixing->heater_is_bare() ? std::min(bare_since, now) : never;
  low_since = low ? std::min(low_since, now) : never;
  for (std::size_t i = 0; i < room->actuators.size(); ++i) {
    const rehearsal::Plug& plug = pretend.plug(static_cast<room::ActuatorIndex>(i));
    on_since[i] = plug.on() ? plug.since() : never;
    if (!wet || !plug.on()) continue;
    wet_to_off = std::max(wet_to_off, now - std::max(wet_since, on_since[i]));
  }
}

double Witness::full_mark(const rehearsal::PretendRoom& pretend) const {
  if (!room->vat) return 0;
  const double by_float = room::find(*room, room::Quantity::float_switch, room::Place::vat)
                              ? pretend.float_switch_at().value
                              : room->vat->capacity.value;
  if (room->vat->stop_at) return std::min(by_float, room->vat->stop_at->value);
  return by_float < room->vat->capacity.value ? by_float : 0;
}

void Witness::begin_anew(bool after_start) {
  const bool deaf = now - deaf_since > deaf_longest;
  for (std::size_t i = 0; i < room->instruments.size(); ++i) {
    Heard& heard_of = heard[i];
    if (deaf && room->instruments[i].on_change && heard_of.value < 0.5) heard_of.ever = false;
    if (after_start) heard_of.online = true;
    heard_of.live = false;
    heard_of.live_in_a_row = 0;
    heard_of.nonsense_in_a_row = 0;
    heard_of.online_at = long_ago;
    if (after_start) heard_of.live_at = long_ago;
  }
}

void Witness::note_reading(const Reading& reading, const room::Instrument& instrument) {
  Heard& heard_of = heard[reading.instrument];
  if (!possible(instrument, reading.value)) {
    ++heard_of.nonsense_in_a_row;
    return;
  }
  const bool dated = reading.taken != long_ago;
  const Instant measured = dated ? reading.taken : now;
  const bool newer = !dated || reading.taken > heard_of.live_at;
  const bool live = (reading.arrival == Arrival::live && newer) ||
                    (reading.arrival == Arrival::dated && newer && reading.taken <= now &&
                     instrument.quantity != room::Quantity::wetness);
  const bool says_yes = is_switch(instrument.quantity) && reading.value >= 0.5;
  if (live) {
    const bool same = heard_of.ever && heard_of.value == reading.value;
    heard_of.before = heard_of.live ? heard_of.value : reading.value;
    if (!same || !heard_of.live) heard_of.same_since = now;
    heard_of.live_in_a_row = same ? heard_of.live_in_a_row + 1 : 1;
    heard_of.live_at = measured;
    heard_of.live = true;
    heard_of.nonsense_in_a_row = 0;
  }
  if (says_yes && heard_of.value < 0.5) heard_of.same_since = now;
  // Danger counts at any age, safety only from live words.
  if (live || says_yes || !heard_of.ever) heard_of.value = reading.value;
  heard_of.ever = true;
}

void Witness::note(const Event& event) {
  for (std::size_t i = 0; i < room->actuators.size(); ++i) {
    // An ON that is not renewed ends with its lease, unless nobody keeps that.
    const room::Actuator& actuator = room->actuators[i];
    Ordered& order = ordered[i];
    const Instant ends =
        actuator.lease_kind == room::LeaseKind::none ? event.at : order.sent + actuator.lease;
    if (order.on) {
      order.on_for += std::max(Duration{0}, std::min(event.at, ends) - now_by_events);
    }
  }
  now = now_by_events = event.at;
  if (const auto* ask = std::get_if<Ask>(&event.what)) asked = *ask;
  if (const auto* start = std::get_if<Started>(&event.what)) {
    started = now;
    clean_start = start->clean;
    if (!start->clean) ++crashes;
    linked = false;
    deaf_since = start->clean ? now - start->away : long_ago;
    armed = false;
    run_until = {};
    bypass_armed_by.reset();
    bypassed_until = {};
    begin_anew(true);
  } else if (const auto* link = std::get_if<Link>(&event.what)) {
    if (linked) deaf_since = now;
    linked = link->up;
    linked_at = now;
    // What cannot be sent is not ordered: the leases end by themselves.
    for (Ordered& order : ordered) {
      order.on = false;
      order.starts = order.starts_kept;
    }
    begin_anew(false);
  } else if (const auto* reading = std::get_if<Reading>(&event.what)) {
    note_reading(*reading, room->instruments[reading->instrument]);
  } else if (const auto* refusal = std::get_if<Refusal>(&event.what)) {
    ++heard[refusal->instrument].nonsense_in_a_row;
  } else if (const auto* available = std::get_if<Availability>(&event.what)) {
    Heard& heard_of = heard[available->instrument];
    heard_of.online = available->online;
    heard_of.online_at = available->online ? now : long_ago;
    if (!available->online) heard_of.live = false;
  }
}

void Witness::note(const Effect& effect) {
  if (const auto* answer = std::get_if<Answer>(&effect)) note_answer(*answer);
  const auto* command = std::get_if<Command>(&effect);
  if (command == nullptr) return;
  Ordered& order = ordered[command->actuator];
  if (command->on && !order.on) {
    ++order.starts_in_all;
    std::shift_right(order.starts.begin(), order.starts.end(), 1);
    order.starts[0] = now;
  }
  if (command->on != order.on) order.since = now;
  order.on = command->on;
  order.sent = now;
}

// Only what was asked for, and confirmed within half a minute with the token of the answer.
void Witness::note_bypass() {
  if (asked.kind == AskKind::bypass) {
    bypass_armed_by = asked;
    bypass_armed_at = now;
  }
  Instant& until = bypassed_until[static_cast<std::size_t>(asked.cause)];
  if (asked.kind == AskKind::end_bypass) until = now;
  if (asked.kind != AskKind::confirm_bypass || !bypass_armed_by) return;
  const bool right = bypass_armed_by->cause == asked.cause &&
                     bypass_armed_by->token == asked.token &&
                     now - bypass_armed_at <= confirmed_within;
  if (!right) return;
  until = now + (bypass_armed_by->lasting > Duration{0} ? bypass_armed_by->lasting : usual_bypass);
  bypass_armed_by.reset();
}

void Witness::note_answer(const Answer& answer) {
  if (!answer.done) return;
  note_bypass();
  if (asked.kind == AskKind::reset) {
    armed = true;
    armed_at = now;
    armed_by = asked;
  } else if (asked.kind == AskKind::start && asked.actuator != no_subject) {
    run_until[asked.actuator] = now + asked.lasting;
  } else if (asked.kind == AskKind::stop && asked.actuator != no_subject) {
    run_until[asked.actuator] = now;
  } else if (asked.kind == AskKind::start) {
    attended_until = asked.lasting > Duration{0} ? now + asked.lasting : never;
  } else if (asked.kind == AskKind::confirm) {
    armed = false;
    told_latched[asked.alarm] = false;
  }
}

void Witness::note_kept() {
  attended_kept = attended_until;
  run_kept = run_until;
  for (Ordered& order : ordered) order.starts_kept = order.starts;
}

// What the disk refused is forgotten: the run that was asked for before comes back.
void Witness::note_death() {
  linked = false;
  attended_until = std::max(attended_until, attended_kept);
  for (std::size_t i = 0; i < run_until.size(); ++i) {
    run_until[i] = std::max(run_until[i], run_kept[i]);
  }
  for (Ordered& order : ordered) order.on = false;
}

bool Witness::fresh(room::InstrumentIndex i) const {
  const room::Instrument& instrument = room->instruments[i];
  const Heard& heard_of = heard[i];
  const Duration patience = room::stale_after(instrument);
  if (instrument.on_change && instrument.has_availability && heard_of.ever) {
    if (!heard_of.online) return false;
    const Instant last = std::max(heard_of.live ? heard_of.live_at : long_ago, heard_of.online_at);
    return last != long_ago && now - last < patience;
  }
  return heard_of.live && now - heard_of.live_at < patience;
}

}  // namespace tidewright::nights
