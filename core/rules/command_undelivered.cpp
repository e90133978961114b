// The broker took a command and says that it reaches nobody, or refused it.
#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

// MQTT 5 reason codes of PUBACK: from 128 on a refusal, 16 "no matching subscribers" (OASIS
// MQTT 5.0, 3.4.2.1).
constexpr int refused_from = 128;
constexpr int nobody_listens = 16;

Judgement judge(const picture::Picture& picture) {
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    const int code = picture.circumstances.delivery[i];
    // An ON that nobody hears starts nothing, and an OFF that is confirmed came through.
    const bool unheard =
        code == nobody_listens && !picture.drives[i].on && picture::confirmed(picture, i) != false;
    if (code < refused_from && !unheard) continue;
    return {Verdict::on, {Why::command_undelivered, i, {static_cast<float>(code)}}, never};
  }
  return {};
}

bool applies(const room::Room& room) { return !room.actuators.empty(); }

}  // namespace

extern const Rule command_undelivered{
    .id = room::RuleId::command_undelivered,
    .name = "command_undelivered",
    .title = "A command reaches nobody",
    .priority = Priority::soon,
    .latching = Latching::never,
    .respond_within = 24h,
    .on_delay =
        2min,  // the plugs notice a restart of the broker later than we do; OFF is said again
    .off_delay = 10s,
    .consequence_of = room::RuleId::broker_lost,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "what the broker answers to each command",
        .limit = "the broker answers a command with a refusal, or an OFF with `nobody listens`, "
                 "and the feedback does not say OFF, for 2 min",
        .origin = "the answers that MQTT 5 defines",
        .causes = "the plug is out of the wall or off the network, a wrong topic in the file, no "
                  "right to write to it",
        .consequence = "the pump cannot be switched from here",
        .action = "Look at the plug: is it in the wall and on the network? If its load still runs, "
                  "pull it out. Check its topic in the file and the broker's rights",
        .automatic =
            "OFF is sent again every minute; whatever runs goes off by itself when its lease ends",
        .test = "pull the plug out of the wall and send `stop`: the alarm must come"}};

}  // namespace tidewright::rules
