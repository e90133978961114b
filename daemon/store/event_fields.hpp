// Names every field of every event once, and the events' kinds. The journal's line is printed and
// read by this walk.
//
// A visitor has these calls; `member` is const if the event is:
//   visit(name, member)
//   visit.later(name, member)              the same; journals of before do not have it
//   visit.instrument(name, member)         an index into the room's instruments
//   visit.instrument_if_any(name, member)  the same, or no_subject
//   visit.actuator(name, member)           an index into the room's actuators
//   visit.actuator_if_any(name, member)    the same, or no_subject; older journals lack it
//   visit.supply_if_any(name, member)      an index into its supplies, or no_subject; older
//                                          journals lack it
#pragma once

#include <array>
#include <string_view>
#include <variant>

#include "core/event.hpp"
#include "core/state/fields.hpp"

namespace tidewright::store {

using What = decltype(Event::what);

// In the order of the variant.
inline constexpr std::array<std::string_view, std::variant_size_v<What>> event_kinds{
    "tick",    "reading",   "refusal",  "availability", "link", "delivery",
    "started", "clock_set", "recorded", "stopping",     "ask",  "tell"};

using state::Either;

void fields(auto&, Either<Tick> auto&) {}
void fields(auto&, Either<Stopping> auto&) {}

void fields(auto& visit, Either<Reading> auto& reading) {
  visit.instrument("instrument", reading.instrument);
  visit("value", reading.value);
  visit("arrival", reading.arrival);
  visit("taken", reading.taken);
}

void fields(auto& visit, Either<Refusal> auto& refusal) {
  visit.instrument("instrument", refusal.instrument);
}

void fields(auto& visit, Either<Availability> auto& availability) {
  visit.instrument("instrument", availability.instrument);
  visit("online", availability.online);
}

void fields(auto& visit, Either<Link> auto& link) { visit("up", link.up); }

void fields(auto& visit, Either<Delivery> auto& delivery) {
  visit.actuator("actuator", delivery.actuator);
  visit("on", delivery.on);
  visit("code", delivery.code);
}

void fields(auto& visit, Either<Started> auto& started) {
  visit("clean", started.clean);
  visit("away", started.away);
  visit.later("readable", started.readable);
}

void fields(auto& visit, Either<ClockSet> auto& clock) {
  visit("ahead", clock.wall.ahead);
  visit("zone", clock.wall.zone);
}

void fields(auto& visit, Either<Recorded> auto& recorded) { visit("ok", recorded.ok); }

void fields(auto& visit, Either<Ask> auto& ask) {
  visit("ask", ask.kind);
  visit("ticket", ask.ticket);
  visit("alarm", ask.alarm);
  visit.later("cause", ask.cause);
  visit("occurrence", ask.occurrence);
  visit.actuator_if_any("actuator", ask.actuator);
  visit("lasting", ask.lasting);
  visit("token", ask.token);
  visit("who", ask.who);
  visit("why", ask.why);
}

void fields(auto& visit, Either<Tell> auto& tell) {
  visit("tell", tell.kind);
  visit("ticket", tell.ticket);
  visit.instrument_if_any("instrument", tell.instrument);
  visit("value", tell.value);
  visit("who", tell.who);
  visit.supply_if_any("supply", tell.supply);
}

}  // namespace tidewright::store
