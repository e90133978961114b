// A protection that nobody has tried for too long may be none.
#include <algorithm>

#include "core/picture/proof_due.hpp"
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

// Until then it is shown only. [choice]
constexpr Duration shown_only_for = std::chrono::days{28};

float days_since(const picture::Picture& picture, const state::Proof& last) {
  const Instant from = last.at == long_ago ? picture.proofs.installed : last.at;
  return static_cast<float>(hours(picture.now - from) / 24);
}

Judgement judge(const picture::Picture& picture) {
  Instant first = never;
  const auto is_over = [&](Instant due) {
    if (due == never) return false;
    const Instant told = due + shown_only_for;
    if (picture.now < told) first = std::min(first, told);
    return picture.now >= told;
  };
  for (std::size_t n = 0; n < picture.room.instruments.size(); ++n) {
    const auto i = static_cast<room::InstrumentIndex>(n);
    if (!is_over(picture::sensor_test_due(picture, i))) continue;
    const float days = days_since(picture, picture.proofs.instruments[n]);
    return {Verdict::on, {Why::sensor_test_due, i, {days}}, never};
  }
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    if (!is_over(picture::lease_test_due(picture, i))) continue;
    const float days = days_since(picture, picture.lease_tests.results[n]);
    return {Verdict::on, {Why::lease_test_due, i, {days}}, never};
  }
  return {Verdict::off, {}, first};
}

bool applies(const room::Room& room) {
  const bool sensors =
      std::any_of(room.instruments.begin(), room.instruments.end(), room::is_tried_by_hand);
  return sensors || !room.actuators.empty();
}

}  // namespace

extern const Rule proof_test_due{
    .id = room::RuleId::proof_test_due,
    .name = "proof_test_due",
    .title = "A protection should be tried",
    .priority = Priority::days,
    .latching = Latching::never,
    .respond_within = std::chrono::days{14},
    .on_delay = 0s,
    .off_delay = 0s,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the dates of the last tests",
        .limit = "four weeks over its time: three months for what a person tries, one week for a "
                 "lease that the daemon tries by itself",
        .origin = "common practice, no source",
        .causes = "nobody has tried it; no fill was long enough for the daemon to try the lease",
        .consequence = "a protection that has failed is not noticed",
        .action = "While the pump runs, lay a wet cloth on the leak sensor, or lift the "
                  "float; see the pump stop; then tell `tested` and reset. For a lease ask "
                  "`test_lease`",
        .automatic = "nothing is stopped",
        .test = "leave it untried for so long"}};

}  // namespace tidewright::rules
