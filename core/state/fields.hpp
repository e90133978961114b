// Names every field of the state once. The store's text and the comparison of two states are made
// of this walk, and of nothing else. tests/unit/core/state/fields_test counts what is forgotten.
//
// A visitor has these calls; `member` is const if the state is:
//   visit(name, member)          one value, or a struct or numbered array that has fields itself
//   visit.rules(name, member)        one value for each rule
//   visit.instruments(name, member)  one value for each instrument of the room
//   visit.actuators(name, member)    one value for each actuator of the room
//   visit.supplies(name, member)     one value for each supply of the room
#pragma once

#include "core/state/alarm_fields.hpp"
#include "core/state/balance_fields.hpp"
#include "core/state/protection_fields.hpp"
#include "core/state/state.hpp"

namespace tidewright::state {

void fields(auto& visit, Either<WallClock> auto& wall) {
  visit("ahead", wall.ahead);
  visit("zone", wall.zone);
}

void fields(auto& visit, Either<Circumstances> auto& circumstances) {
  visit("now", circumstances.now);
  visit("wall", circumstances.wall);
  visit("link_up", circumstances.link_up);
  visit("link_since", circumstances.link_since);
  visit("unheard_since", circumstances.unheard_since);
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
  visit("may_start", drive.may_start);
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
  visit("roles", latch.roles);
}

void fields(auto& visit, Either<Armed> auto& armed) {
  visit("armed", armed.armed);
  visit("alarm", armed.alarm);
  visit("cause", armed.cause);
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
  visit("turning_since", working.turning_since);
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

void fields(auto& visit, Either<GaugeNoise> auto& noise) {
  visit("spread", noise.spread);
  visit("last", noise.last);
  visit("before", noise.before);
  visit("fresh", noise.fresh);
  visit("count", noise.count);
}

void fields(auto& visit, Either<LevelTrend> auto& level) {
  visit("known", level.known);
  visit("calm", level.calm);
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

void fields(auto& visit, Either<ResinCharge> auto& resin) {
  visit("passed", resin.passed);
  visit("cation_eq", resin.cation_eq);
  visit("anion_eq", resin.anion_eq);
}

void fields(auto& visit, Either<FeedLevel> auto& feed) {
  visit("usual", feed.usual);
  visit("lately", feed.lately);
  visit("learned", feed.learned);
  visit("taken", feed.taken);
}

void fields(auto& visit, Either<Upkeep> auto& upkeep) {
  visit("began", upkeep.began);
  visit("cleaned", upkeep.cleaned);
  visit("aged", upkeep.aged);
  visit("water_age", upkeep.water_age);
}

void fields(auto& visit, Either<Stock> auto& stock) {
  visit("counted", stock.counted);
  visit("amount", stock.amount);
  visit("made", stock.made);
}

void fields(auto& visit, Either<Ledger> auto& ledger) {
  visit.actuators("working", ledger.working);
  visit("product", ledger.product);
  visit("permeate", ledger.permeate);
  visit("noise", ledger.noise);
  visit("level", ledger.level);
  visit("fill", ledger.fill);
  visit("learned", ledger.learned);
  visit("balance", ledger.balance);
  visit("flowed", ledger.flowed);
  visit("made", ledger.made);
  visit("resin_changed", ledger.resin_changed);
  visit("resin", ledger.resin);
  visit("feed", ledger.feed);
  visit("upkeep", ledger.upkeep);
  visit.supplies("stocks", ledger.stocks);
  visit("posted", ledger.posted);
}

void fields(auto& visit, Either<MakeWater> auto& make_water) {
  visit("demand", make_water.demand);
  visit("why", make_water.why);
  visit("since", make_water.since);
  visit("until", make_water.until);
  visit("wants_water", make_water.wants_water);
}

void fields(auto& visit, Either<Attended> auto& attended) {
  visit("since", attended.since);
  visit("until", attended.until);
  visit("why", attended.why);
}

void fields(auto& visit, Either<Signal> auto& signal) {
  visit("value", signal.value);
  visit("doubted", signal.doubted);
  visit("before", signal.before);
  visit("received", signal.received);
  visit("changed", signal.changed);
  visit("lost", signal.lost);
  visit("differs", signal.differs);
  visit("flat", signal.flat);
  visit("refused", signal.refused);
  visit("refused_in_a_row", signal.refused_in_a_row);
  visit("good_in_a_row", signal.good_in_a_row);
  visit("quality", signal.quality);
  visit("status", signal.status);
  visit("why", signal.why);
  visit("doubt", signal.doubt);
  visit("against", signal.against);
  visit("doubt_numbers", signal.doubt_numbers);
  visit("befores", signal.befores);
  visit("seen", signal.seen);
  visit("live", signal.live);
  visit("available", signal.available);
}

void fields(auto& visit, Either<WaterMeter> auto& meter) {
  visit("rate", meter.rate);
  visit("passed", meter.passed);
  visit("count", meter.count);
  visit("at_quiet", meter.at_quiet);
  visit("heard", meter.heard);
  visit("flowed", meter.flowed);
}

void fields(auto& visit, Either<LevelWindow> auto& window) {
  visit("open", window.open);
  visit("began", window.began);
  visit("passed", window.passed);
  visit("level", window.level);
  visit("highest", window.highest);
  visit("passed_last", window.passed_last);
}

void fields(auto& visit, Either<BalanceWindow> auto& window) {
  visit("open", window.open);
  visit("feed", window.feed);
  visit("product", window.product);
  visit("concentrate", window.concentrate);
}

void fields(auto& visit, Either<Comparison> auto& comparison) {
  visit("water", comparison.water);
  visit("quiet", comparison.quiet);
  visit("level", comparison.level);
  visit("balance", comparison.balance);
  visit("at_odds", comparison.at_odds);
  visit("compared", comparison.compared);
}

void fields(auto& visit, Either<State> auto& state) {
  visit("circumstances", state.circumstances);
  visit.instruments("signals", state.signals);
  visit("comparison", state.comparison);
  visit("ledger", state.ledger);
  visit("proofs", state.proofs);
  visit.rules("findings", state.findings);
  visit("make_water", state.make_water);
  visit.actuators("attended", state.attended);
  visit("lease_tests", state.lease_tests);
  visit("bypasses", state.bypasses);
  visit.actuators("drives", state.drives);
  visit.rules("latches", state.latches);
  visit("armed", state.armed);
  visit.rules("alarms", state.alarms);
  visit("flood", state.flood);
  visit("digest", state.digest);
  visit("notices", state.notices);
}

}  // namespace tidewright::state
