// The pump starts again and again: its pressure switch hunts, or somebody plays with the plug.
#include <algorithm>

#include "core/rules/rule.hpp"

namespace tidewright::rules {
namespace {

using namespace std::chrono_literals;

Judgement judge(const picture::Picture& picture) {
  if (!picture.driving) return {};
  const room::ActuatorIndex driving = *picture.driving;
  const room::Actuator& actuator = picture.room.actuators[driving];
  // Such a plug ends each run by itself; many runs are its way.
  if (actuator.lease_kind == room::LeaseKind::plug_fixed) return {};
  const auto& starts = picture.ledger.working[driving].starts;
  const auto recent = std::count_if(starts.begin(), starts.end(), [&](Instant start) {
    return start != long_ago && picture.now - start < Duration{1h};
  });
  if (recent <= actuator.starts_per_hour_max) return {};
  const Instant oldest = starts[static_cast<std::size_t>(actuator.starts_per_hour_max)];
  return {Verdict::on,
          {Why::starts_too_often,
           driving,
           {static_cast<float>(recent), static_cast<float>(actuator.starts_per_hour_max)}},
          oldest + 1h};
}

bool applies(const room::Room& room) {
  return room.purifier && room.purifier->driven_by < room.actuators.size() &&
         room.actuators[room.purifier->driven_by].lease_kind != room::LeaseKind::plug_fixed;
}

}  // namespace

extern const Rule short_cycling{
    .id = room::RuleId::short_cycling,
    .name = "short_cycling",
    .title = "The pump starts too often",
    .priority = Priority::soon,
    .latching = Latching::on_repeat,
    .respond_within = 24h,
    .on_delay = 0s,
    .off_delay = 30min,
    .applies = applies,
    .judge = judge,
    .record = {
        .source = "the starts of the pump, by its power where a meter shows it",
        .limit =
            "more starts in an hour than the file allows (6, common practice for small motors)",
        .origin = "common practice, no source: small motors are built for a few starts an hour",
        .causes =
            "a pressure switch that hunts near its limit, a leaking check valve, a float that "
            "dribbles, a hand on the plug",
        .consequence = "the pump's motor and switch wear out",
        .action = "Listen to the pump, then check the pressure switch, the check valve and the "
                  "float valve: one of them leaks or flutters",
        .automatic = "the pump stops; it is tried again 5 times a day, then it stays off until a "
                     "person resets",
        .test = "switch the plug seven times by hand: the alarm must come"}};

}  // namespace tidewright::rules
