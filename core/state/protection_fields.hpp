// The part of state/fields about bypasses, the tests of leases and the proof tests.
#pragma once

#include "core/state/bypass.hpp"
#include "core/state/either.hpp"
#include "core/state/lease_test.hpp"
#include "core/state/proof.hpp"

namespace tidewright::state {

void fields(auto& visit, Either<Bypass> auto& bypass) {
  visit("cause", bypass.cause);
  visit("since", bypass.since);
  visit("until", bypass.until);
  visit("who", bypass.who);
  visit("why", bypass.why);
}

void fields(auto& visit, Either<Bypasses> auto& bypasses) {
  visit("items", bypasses.items);
  visit("asked", bypasses.asked);
  visit("armed", bypasses.armed);
  visit("passed", bypasses.passed);
}

void fields(auto& visit, Either<LeaseTest> auto& test) {
  visit("phase", test.phase);
  visit("actuator", test.actuator);
  visit("by_person", test.by_person);
  visit("since", test.since);
  visit("why", test.why);
}

void fields(auto& visit, Either<LeaseTests> auto& tests) {
  visit.actuators("results", tests.results);
  visit("under_way", tests.under_way);
}

void fields(auto& visit, Either<Proof> auto& proof) {
  visit("at", proof.at);
  visit("passed", proof.passed);
  visit("figure", proof.figure);
}

void fields(auto& visit, Either<Trial> auto& trial) {
  visit("instrument", trial.instrument);
  visit("demanded", trial.demanded);
  visit("off", trial.off);
}

void fields(auto& visit, Either<MeteredFill> auto& fill) {
  visit("under_way", fill.under_way);
  visit("passed", fill.passed);
  visit("gained", fill.gained);
}

void fields(auto& visit, Either<Proofs> auto& proofs) {
  visit("installed", proofs.installed);
  visit.instruments("instruments", proofs.instruments);
  visit("gauge", proofs.gauge);
  visit("valve", proofs.valve);
  visit("fill", proofs.fill);
  visit("trial", proofs.trial);
}

}  // namespace tidewright::state
