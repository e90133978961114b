// A command that its feedback does not follow. Not obeying OFF is the worse half: a trip would be
// in vain.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

constexpr int runs_ignored = 2;  // the first try and one more
constexpr int offs_ignored = 3;  // against a hand on the button: each was sent on its own

float age(const picture::Picture& picture, Instant since) {
  return static_cast<float>(seconds(picture.now - since));
}

Judgement judge_off(const picture::Picture& picture, room::ActuatorIndex i) {
  const state::Drive& drive = picture.drives[i];
  if (drive.on || picture::confirmed(picture, i) != true) return {};
  const Duration due = room::feedback_due(picture.room, i);
  // Once obeyed, a later ON is somebody's hand on the button; only one that every further OFF
  // leaves standing is disobedience.
  const Instant since = drive.obeyed ? picture.ledger.working[i].since : drive.commanded;
  const bool sent_enough = !drive.obeyed || drive.resent >= offs_ignored;
  if (picture.now < since + due) return {Verdict::off, {}, since + due};
  if (!sent_enough) return {};
  return {Verdict::on, {Why::off_not_obeyed, i, {age(picture, since)}}, never};
}

Judgement judge(const picture::Picture& picture) {
  Judgement soonest;
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    const Judgement off = judge_off(picture, i);
    if (off.verdict == Verdict::on) return off;
    soonest.judge_again = std::min(soonest.judge_again, off.judge_again);
  }
  for (std::size_t n = 0; n < picture.room.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    const state::Drive& drive = picture.drives[i];
    if (drive.ignored < runs_ignored) continue;
    return {Verdict::on, {Why::on_not_obeyed, i, {age(picture, drive.commanded)}}, never};
  }
  return soonest;
}

bool applies(const room::Room& room) {
  for (std::size_t i = 0; i < room.actuators.size(); ++i) {
    const auto actuator = static_cast<room::ActuatorIndex>(i);
    if (room::find(room, room::Quantity::feedback, actuator)) return true;
  }
  return false;
}

}  // namespace

extern const Rule actuator_disobeys{
    .id = room::RuleId::actuator_disobeys,
    .name = "actuator_disobeys",
    .title = "A plug or valve does not obey",
    .priority = Priority::urgent,
    .latching = Latching::at_once,
    .respond_within = 10min,
    .on_delay = 0s,
    .off_delay = 10s,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "what the plug or valve says of itself",
        .limit = "the feedback does not follow a command within its travel time and 10 s; for ON, "
                 "twice in a row",
        .origin = "our own choice: sleepy radio networks take seconds",
        .causes = "a welded relay, a plug without radio or power, a plug that was switched by hand "
                  "and is held so",
        .consequence = "a leak could not be stopped from here",
        .action = "Pull the plug out of the wall and close the feed cock by hand. Put a working "
                  "plug in, then reset",
        .automatic = "OFF is sent again after 1, 2 and 4 s, and every other pump and valve is "
                     "switched off; all stay off until a person resets",
        .test = "take the plug out of the radio's reach, then start: the alarm must come"}};

}  // namespace tidewright::rules
