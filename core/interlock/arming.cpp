#include "core/interlock/arming.hpp"

#include "core/base/mutant.hpp"

namespace tidewright::interlock {
namespace {

using namespace std::chrono_literals;

constexpr std::uint8_t wrong_tries_max = 3;
constexpr Duration locked_for = 60s;

Reason because(Why why, float number = 0) { return {why, no_subject, {number}}; }

}  // namespace

Reason arm(const Ask& ask, Why answer, Instant now, state::Armed& armed) {
  if (armed.wrong_tries >= wrong_tries_max && now - armed.at < locked_for) {
    return because(Why::too_many_tries, static_cast<float>(seconds(locked_for)));
  }
  // Asking anew gives a new token, but no new tries: only the wait or the right token does.
  const std::uint8_t tries = armed.wrong_tries < wrong_tries_max ? armed.wrong_tries : 0;
  armed = {.armed = true,
           .alarm = ask.alarm,
           .cause = ask.cause,
           .token = ask.token,
           .at = now,
           .wrong_tries = tries};
  return because(answer, static_cast<float>(ask.token));
}

std::optional<Reason> wrong_confirmation(const Ask& ask, Instant now, state::Armed& armed) {
  const bool same = armed.alarm == ask.alarm && armed.cause == ask.cause;
  if (!armed.armed || !same || now - armed.at > armed_for) {
    return because(Why::armed_too_long_ago, static_cast<float>(seconds(armed_for)));
  }
  if (armed.token == ask.token || mutant(Mutant::any_token_will_do)) return std::nullopt;
  if (++armed.wrong_tries >= wrong_tries_max) {
    armed.armed = false;
    armed.at = now;
  }
  return because(Why::wrong_token);
}

bool reset_is_armed(const state::Armed& armed, room::RuleId alarm, Instant now) {
  return armed.armed && armed.alarm == alarm && armed.cause == room::CauseId{} &&
         now - armed.at <= armed_for;
}

}  // namespace tidewright::interlock
