// No line to the broker: blind and mute. Leases end every run by themselves.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  const state::Circumstances& now = picture.circumstances;
  if (now.link_up) return {};
  const Instant since = std::max(now.link_since, now.started);
  return {Verdict::on,
          {Why::link_down, no_subject, {static_cast<float>(seconds(picture.now - since))}},
          never};
}

bool applies(const room::Room&) { return true; }

}  // namespace

extern const Rule broker_lost{
    .id = room::RuleId::broker_lost,
    .name = "broker_lost",
    .title = "No line to the broker",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 12h,
    .on_delay = 1min,   // a restart of the broker is nothing to tell
    .off_delay = 1min,  // the line must hold before it is called back
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the line to the broker",
        .limit = "no connection for 1 min; over MQTT it can be told only after its return",
        .origin = "our own choice",
        .causes = "the broker or its machine is down, the network is broken, a password changed",
        .consequence = "no leak is seen, no water is made",
        .action = "Restart the broker or its machine, check the network",
        .automatic = "whatever runs goes off by itself when its lease ends (2 min, unless the file "
                     "says otherwise); the daemon connects again by itself and sends OFF first",
        .test = "stop the broker for two minutes"}};

}  // namespace tidewright::rules
