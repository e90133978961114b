// A person has taken a cause out of the interlock. It must not be forgotten.
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  Judgement judgement;
  for (const state::Bypass& bypass : picture.bypasses.items) {
    if (picture.now >= bypass.until) continue;
    const auto cause = static_cast<float>(static_cast<std::size_t>(bypass.cause));
    const auto minutes = static_cast<float>(seconds(bypass.until - bypass.since) / 60);
    return {Verdict::on, {Why::bypassed, no_subject, {cause, minutes}}, bypass.until};
  }
  return judgement;
}

bool applies(const room::Room& room) { return !room.actuators.empty(); }

}  // namespace

extern const Rule bypass_active{
    .id = room::RuleId::bypass_active,
    .name = "bypass_active",
    .title = "A protection is bypassed",
    .priority = Priority::days,
    .latching = Latching::never,
    .may_be_shelved = false,
    .respond_within = 24h,
    .on_delay = 0s,
    .off_delay = 0s,
    .said_again = 10min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "people's requests",
        .limit = "a person asked for it and confirmed it: 30 min where no time was given, 4 h at "
                 "most, 60 min where a leak sensor is concerned",
        .origin = "our own choice: as long as it takes to change a sensor",
        .causes = "somebody works at the sensor, or waits for a new one",
        .consequence = "what was bypassed stops nothing meanwhile",
        .action = "Stay near. Say `end_bypass` as soon as the work is done",
        .automatic = "the cause is passed over until the time is up, or until the daemon starts "
                     "anew; it is said every 10 min",
        .test = "ask for a bypass of one minute and confirm it"}};

}  // namespace tidewright::rules
