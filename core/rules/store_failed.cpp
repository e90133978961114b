// The disk does not take the records. Switching off never waits for it, but a latch might be lost.
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  if (picture.circumstances.recording) return {};
  return {Verdict::on, {Why::not_recorded, no_subject, {}}, never};
}

bool applies(const room::Room&) { return true; }

}  // namespace

extern const Rule store_failed{
    .id = room::RuleId::store_failed,
    .name = "store_failed",
    .title = "The disk does not record",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 24h,
    .on_delay = 0s,
    .off_delay = 1min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "whether the disk takes each record",
        .limit = "the last record could not be written",
        .origin = "our own choice: the first refusal",
        .causes = "the disk is full, read-only or broken",
        .consequence = "after a restart the alarms and totals of this time are missing",
        .action = "Make room on the disk or replace it. Until then do not restart the daemon",
        .automatic = "everything goes on; switching off never waits for the disk",
        .test = "make the state folder read-only: the alarm must come"}};

}  // namespace tidewright::rules
