// In a test the plug stayed on although the daemon was silent, or went off although it was renewed:
// what is told of its lease is not true.
#include "core/picture/proof_due.hpp"
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  for (std::size_t i = 0; i < picture.room.actuators.size(); ++i) {
    if (!state::has_failed(picture.lease_tests.results[i])) continue;
    return {Verdict::on, {Why::lease_not_kept, static_cast<std::uint8_t>(i), {}}, never};
  }
  return {};
}

bool applies(const room::Room& room) {
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    if (picture::lease_can_be_tried(room, static_cast<room::ActuatorIndex>(i))) return true;
  }
  return false;
}

}  // namespace

extern const Rule lease_not_kept{
    .id = room::RuleId::lease_not_kept,
    .name = "lease_not_kept",
    .title = "A plug's own switch-off cannot be relied on",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 24h,
    .on_delay = 0s,
    .off_delay = 0s,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the feedback of each plug and valve, in a test",
        .limit = "in a test its feedback must stay ON for three times the lease while ON is "
                 "renewed, and say OFF when it is not, within 5/4 of the lease and the "
                 "feedback's time",
        .origin = "our own choice: a plug's clock is not ours",
        .causes = "the plug's auto-off is not set or set to another time, an update has forgotten "
                  "it, the hub's automation is gone",
        .consequence = "if the daemon or the network fails in a fill, the water runs on",
        .action = "Set the plug's auto-off as the file says, or tell the file how it really is. "
                  "Then ask `test_lease`",
        .automatic = "no water is made unattended until a test is passed; with minutes it is",
        .test = "take the plug's auto-off away and ask `test_lease`"}};

}  // namespace tidewright::rules
