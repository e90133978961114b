// What was latched when the run before ended is not known, so a trip is assumed.
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

constexpr Duration stands_for = 5min;  // as long as nothing starts after an unclean start

Judgement judge(const picture::Picture& picture) {
  const Instant ends = picture.circumstances.started + stands_for;
  if (!picture.circumstances.unreadable || picture.now >= ends) return {};
  return {Verdict::on, {Why::records_not_read, no_subject, {}}, ends};
}

bool applies(const room::Room&) { return true; }

}  // namespace

extern const Rule records_unreadable{
    .id = room::RuleId::records_unreadable,
    .name = "records_unreadable",
    .title = "The records could not be read",
    .priority = Priority::soon,
    .latching = Latching::at_once,
    .respond_within = 24h,
    .on_delay = 0s,
    .off_delay = 0s,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the daemon's own state file, as it is read at the start",
        .limit = "at its start the daemon finds its state damaged, gone or refused by the disk",
        .origin = "what is not known to be safe is not safe",
        .causes = "a power cut on a worn memory card, a full or broken disk, a folder that is not "
                  "mounted or may not be read",
        .consequence = "no water is made, and an alarm that was latched before is forgotten",
        .action = "Look for water on the floor and at the vat. If all is well, reset the alarm and "
                  "start again. The log names the damaged file, which is kept under a new name. "
                  "If it happens again, replace the disk or the memory card",
        .automatic = "everything is switched off and stays off until a person resets, which "
                     "needs every leak sensor to say dry twice",
        .test = "stop the daemon, put a letter in the place of state.db, start it: the alarm "
                "must come"}};

}  // namespace tidewright::rules
