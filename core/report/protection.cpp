#include <fmt/format.h>

#include "core/picture/proof_due.hpp"
#include "core/report/fields.hpp"
#include "core/report/phrases.hpp"
#include "core/report/things.hpp"

namespace tidewright::report {
namespace {

using picture::Picture;

std::string day_of(const Picture& picture, Instant at) {
  return wall_time(at, picture.circumstances.wall).substr(0, 10);
}

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

// "floor: passed on 2026-03-01, off within 1.2 s; due on 2026-05-31".
std::string entry(const Picture& picture, const std::string& id, Instant last,
                  const std::string& result, Instant due) {
  std::string text = id + ": ";
  text += last == long_ago ? "never tried" : result + " on " + day_of(picture, last);
  return text + (picture.now >= due ? "; due since " : "; due on ") + day_of(picture, due);
}

std::vector<std::string> proof_tests(const Picture& picture, bool only_due) {
  std::vector<std::string> list;
  const auto add = [&](const std::string& id, Instant last, const std::string& result,
                       Instant due) {
    if (due == never || (only_due && picture.now < due)) return;
    list.push_back(entry(picture, id, last, result, due));
  };
  for (std::size_t n = 0; n < picture.room.instruments.size(); ++n) {
    const auto i = static_cast<room::InstrumentIndex>(n);
    const state::Proof& proof = picture.proofs.instruments[n];
    const std::string passed =
        fmt::format("passed, off within {} s,", number(static_cast<double>(proof.figure)));
    add(picture.room.instruments[n].id, proof.at, proof.passed ? passed : "failed",
        picture::sensor_test_due(picture, i));
  }
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    const state::LeaseTest& test = picture.lease_tests[n];
    const bool kept = test.proof == state::LeaseProof::kept;
    add("the lease of " + picture.room.actuators[n].id, test.proved, kept ? "kept" : "not kept",
        picture::lease_test_due(picture, i));
  }
  return list;
}

std::string gauge(const Picture& picture) {
  const state::Proof& proof = picture.proofs.gauge;
  if (proof.at == long_ago) return "no fill has been long enough yet";
  return fmt::format("{} on {}: it showed {:.0f} % of what was expected",
                     proof.passed ? "passed" : "failed", day_of(picture, proof.at),
                     100 * static_cast<double>(proof.figure));
}

}  // namespace

Thing protection(const Picture& picture) {
  Fields fields{"protection", ""};
  fields.add("bypassed", bypassed(picture))
      .add("proof_tests", proof_tests(picture, false))
      .add("proof_tests_due", proof_tests(picture, true))
      .add("gauge_against_fill", gauge(picture));
  return fields.done();
}

}  // namespace tidewright::report
