// Names every field of the state once. The store's text and the comparison of two states are made
// of this walk, and of nothing else. tests/unit/core/state/fields_test counts what is forgotten.
//
// A visitor has these calls; `member` is const if the state is:
//   visit(name, member)          one value, or a struct or numbered array that has fields itself
//   visit.rules(name, member)        one value for each rule
//   visit.instruments(name, member)  one value for each instrument of the room
//   visit.actuators(name, member)    one value for each actuator of the room
#pragma once

#include <concepts>
#include <type_traits>

#include "core/state/state.hpp"

namespace tidewright::state {

// A `Struct`, const or not.
template <class T, class Struct>
concept Either = std::same_as<std::remove_const_t<T>, Struct>;

void fields(auto& visit, Either<Alarm> auto& alarm) {
  visit("active", alarm.active);
  visit("acknowledged", alarm.acknowledged);
  visit("suppression", alarm.suppression);
  visit("occurrence", alarm.occurrence);
  visit("since", alarm.since);
  visit("acknowledged_at", alarm.acknowledged_at);
  visit("announced", alarm.announced);
  visit("shelved_until", alarm.shelved_until);
  visit("chattering", alarm.chattering);
  visit("why", alarm.why);
}

void fields(auto& visit, Either<Flood> auto& flood) { visit("told", flood.told); }

void fields(auto& visit, Either<WallClock> auto& wall) {
  visit("ahead", wall.ahead);
  visit("zone", wall.zone);
}

void fields(auto& visit, Either<Circumstances> auto& circumstances) {
  visit("now", circumstances.now);
  visit("wall", circumstances.wall);
  visit("link_up", circumstances.link_up);
  visit("link_since", circumstances.link_since);
  visit("started", circumstances.started);
  visit("unclean", circumstances.unclean);
  visit("unreadable", circumstances.unreadable);
  visit("away", circumstances.away);
  visit("recording", circumstances.recording);
  visit("stopping", circumstances.stopping);
  visit.actuators("delivery", circumstances.delivery);
}

void fields(auto& visit, Either<Drive> auto& drive) {
  visit("on", drive.on);
  visit("obeyed", drive.obeyed);
  visit("wanted", drive.wanted);
  visit("held", drive.held);
  visit("why", drive.why);
  visit("commanded", drive.commanded);
  visit("sent", drive.sent);
  visit("resent", drive.resent);
  visit("ignored", drive.ignored);
  visit("starts", drive.starts);
}

void fields(auto& visit, Either<Finding> auto& finding) {
  visit("raw", finding.raw);
  visit("active", finding.active);
  visit("raw_since", finding.raw_since);
  visit("active_since", finding.active_since);
  visit("why", finding.why);
  visit("activations", finding.activations);
}

void fields(auto& visit, Either<Latch> auto& latch) {
  visit("set", latch.set);
  visit("first", latch.first);
  visit("since", latch.since);
  visit("cause", latch.cause);
  visit("stands", latch.stands);
  visit("stops", latch.stops);
}

void fields(auto& visit, Either<Armed> auto& armed) {
  visit("armed", armed.armed);
  visit("alarm", armed.alarm);
  visit("token", armed.token);
  visit("at", armed.at);
  visit("wrong_tries", armed.wrong_tries);
}

void fields(auto& visit, Either<Working> auto& working) {
  visit("on", working.on);
  visit("since", working.since);
  visit("run", working.run);
  visit("day", working.day);
  visit("day_began", working.day_began);
  visit("total", working.total);
  visit("turning", working.turning);
  visit("starts", working.starts);
}

void fields(auto& visit, Either<Sample> auto& sample) {
  visit("at", sample.at);
  visit("ppm", sample.ppm);
  visit("litres", sample.litres);
}

void fields(auto& visit, Either<Samples> auto& samples) {
  visit("items", samples.items);
  visit("count", samples.count);
}

void fields(auto& visit, Either<LevelTrend> auto& level) {
  visit("known", level.known);
  visit("peak", level.peak);
  visit("moved", level.moved);
  visit("at_off", level.at_off);
  visit("rate", level.rate);
  visit("from", level.from);
  visit("middle", level.middle);
  visit("from_at", level.from_at);
  visit("middle_at", level.middle_at);
}

void fields(auto& visit, Either<Fill> auto& fill) {
  visit("under_way", fill.under_way);
  visit("began", fill.began);
  visit("to_go", fill.to_go);
  visit("gained", fill.gained);
  visit("drawn", fill.drawn);
  visit("worked", fill.worked);
  visit("flat", fill.flat);
  visit("expected", fill.expected);
}

void fields(auto& visit, Either<LearnedFlow> auto& learned) {
  visit("fills", learned.fills);
  visit("share", learned.share);
}

void fields(auto& visit, Either<Ledger> auto& ledger) {
  visit.actuators("working", ledger.working);
  visit("product", ledger.product);
  visit("permeate", ledger.permeate);
  visit("level", ledger.level);
  visit("fill", ledger.fill);
  visit("learned", ledger.learned);
  visit("flowed", ledger.flowed);
  visit("made", ledger.made);
  visit("resin_changed", ledger.resin_changed);
  visit("posted", ledger.posted);
}

void fields(auto& visit, Either<MakeWater> auto& make_water) {
  visit("demand", make_water.demand);
  visit("why", make_water.why);
  visit("since", make_water.since);
  visit("until", make_water.until);
  visit("wants_water", make_water.wants_water);
}

void fields(auto& visit, Either<Signal> auto& signal) {
  visit("value", signal.value);
  visit("doubted", signal.doubted);
  visit("received", signal.received);
  visit("changed", signal.changed);
  visit("lost", signal.lost);
  visit("refused", signal.refused);
  visit("refused_in_a_row", signal.refused_in_a_row);
  visit("good_in_a_row", signal.good_in_a_row);
  visit("quality", signal.quality);
  visit("status", signal.status);
  visit("why", signal.why);
  visit("seen", signal.seen);
  visit("live", signal.live);
  visit("available", signal.available);
}

void fields(auto& visit, Either<State> auto& state) {
  visit("circumstances", state.circumstances);
  visit.instruments("signals", state.signals);
  visit("ledger", state.ledger);
  visit.rules("findings", state.findings);
  visit("make_water", state.make_water);
  visit.actuators("drives", state.drives);
  visit.rules("latches", state.latches);
  visit("armed", state.armed);
  visit.rules("alarms", state.alarms);
  visit("flood", state.flood);
}

}  // namespace tidewright::state
