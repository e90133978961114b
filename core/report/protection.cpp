#include <fmt/format.h>

#include "core/picture/proof_due.hpp"
#include "core/report/fields.hpp"
#include "core/report/phrases.hpp"
#include "core/report/things.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;

std::vector<std::string> bypassed(const Picture& picture) {
  std::vector<std::string> list;
  for (const state::Bypass& bypass : picture.bypasses.items) {
    if (picture.now >= bypass.until) continue;
    list.push_back(fmt::format("{} until {} by {}: {}", room::name(bypass.cause),
                               clock_time(bypass.until, picture.circumstances.wall),
                               bypass.who.view(), bypass.why.view()));
  }
  return list;
}

// "passed on 2026-03-01 (1.2 s)"; `unit` of its figure, empty: it has none.
std::string result(const Picture& picture, const state::Proof& proof, std::string_view unit) {
  if (proof.at == long_ago) return "never tried";
  std::string text = proof.passed ? "passed on " : "failed on ";
  text += date(proof.at, picture.circumstances.wall);
  if (unit.empty()) return text;
  return text + fmt::format(" ({} {})", number(static_cast<double>(proof.figure)), unit);
}

struct Tests {
  std::vector<std::string> all, due;

  void add(const Picture& picture, const std::string& id, const state::Proof& proof,
           std::string_view unit, Instant next) {
    if (next == never) return;
    const bool is_due = picture.now >= next;
    all.push_back(fmt::format("{}: {}; due {} {}", id, result(picture, proof, unit),
                              is_due ? "since" : "on", date(next, picture.circumstances.wall)));
    if (is_due) due.push_back(id);
  }
};

Tests proof_tests(const Picture& picture) {
  Tests tests;
  for (std::size_t n = 0; n < picture.room.instruments.size(); ++n) {
    const auto i = static_cast<room::InstrumentIndex>(n);
    const state::Proof& proof = picture.proofs.instruments[n];
    tests.add(picture, picture.room.instruments[n].id, proof, proof.passed ? "s" : "",
              picture::sensor_test_due(picture, i));
  }
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    tests.add(picture, "the lease of " + picture.room.actuators[n].id,
              picture.lease_tests.results[n], "", picture::lease_test_due(picture, i));
  }
  return tests;
}

}  // namespace

Thing protection(const Picture& picture) {
  const Tests tests = proof_tests(picture);
  Fields fields{"protection", ""};
  fields.add("bypassed", bypassed(picture))
      .add("proof_tests", tests.all)
      .add("proof_tests_due", tests.due)
      .add("gauge_against_meter", result(picture, picture.proofs.gauge, "L of each L metered"))
      .add("valve_holds", result(picture, picture.proofs.valve, "L/h after OFF"));
  return fields.done();
}

}  // namespace tidewright::report
