#include "core/interlock/reset.hpp"

#include <algorithm>

#include "core/base/mutant.hpp"

namespace tidewright::interlock {
namespace {

using namespace std::chrono_literals;
using room::RuleId;

constexpr Duration armed_for = 30s;
constexpr std::uint8_t wrong_tries_max = 3;
constexpr Duration locked_for = 60s;

Reason because(Why why, std::uint8_t subject = no_subject, float number = 0) {
  return {why, subject, {number}};
}

// Dry in two good live samples; a sensor that speaks on change only may not say it twice for days,
// and one good word must do.
std::optional<Reason> not_yet_dry(const picture::Picture& picture) {
  for (std::size_t i = 0; i < picture.room.instruments.size(); ++i) {
    const room::Instrument& instrument = picture.room.instruments[i];
    if (instrument.quantity != room::Quantity::wetness) continue;
    const state::Signal& signal = picture.signals[i];
    const bool dry = signal.quality == Quality::good && signal.value < 0.5;
    const bool twice = signal.good_in_a_row >= 2 && signal.received > signal.changed;
    if (!dry || !(twice || instrument.on_change))
      return because(Why::still_wet_or_unknown, static_cast<std::uint8_t>(i));
  }
  return std::nullopt;
}

std::optional<Reason> refusal(const picture::Picture& picture, const state::Findings& findings,
                              const state::Latches& latches, RuleId alarm) {
  if (!latches[alarm].set) return because(Why::not_latched);
  if (mutant(Mutant::reset_whatever_stands)) return std::nullopt;
  // Records that are gone may have held a leak.
  if (alarm == RuleId::leak || alarm == RuleId::records_unreadable) {
    if (const auto wet = not_yet_dry(picture)) return wet;
  }
  if (findings[alarm].raw) return because(Why::cause_still_stands);
  return std::nullopt;
}

Reason arm(const Ask& ask, Instant now, state::Armed& armed) {
  if (armed.wrong_tries >= wrong_tries_max && now - armed.at < locked_for) {
    return because(Why::too_many_tries, no_subject, static_cast<float>(seconds(locked_for)));
  }
  // Asking anew gives a new token, but no new tries: only the wait or the right token does.
  const std::uint8_t tries = armed.wrong_tries < wrong_tries_max ? armed.wrong_tries : 0;
  armed = {.armed = true, .alarm = ask.alarm, .token = ask.token, .at = now, .wrong_tries = tries};
  return because(Why::armed, no_subject, static_cast<float>(ask.token));
}

// The oldest of the latches that are left is the first cause from now on.
void clear(state::Latches& latches, RuleId alarm) {
  const bool was_first = latches[alarm].first;
  const bool stands = latches[alarm].stands;
  latches[alarm] = {};
  latches[alarm].stands = stands;
  if (!was_first) return;
  state::Latch* oldest = nullptr;
  for (state::Latch& latch : latches.items) {
    if (latch.first) return;
    if (latch.set && (oldest == nullptr || latch.since < oldest->since)) oldest = &latch;
  }
  if (oldest != nullptr) oldest->first = true;
}

std::optional<Reason> wrong_confirmation(const Ask& ask, Instant now, state::Armed& armed) {
  if (!armed.armed || armed.alarm != ask.alarm || now - armed.at > armed_for) {
    return because(Why::armed_too_long_ago, no_subject, static_cast<float>(seconds(armed_for)));
  }
  if (armed.token == ask.token || mutant(Mutant::any_token_will_do)) return std::nullopt;
  if (++armed.wrong_tries >= wrong_tries_max) {
    armed.armed = false;
    armed.at = now;
  }
  return because(Why::wrong_token);
}

}  // namespace

void reset(const picture::Picture& picture, const state::Findings& findings, const Event& event,
           state::Latches& latches, state::Armed& armed, Effects& effects) {
  const auto* ask = std::get_if<Ask>(&event.what);
  if (ask == nullptr) return;
  if (mutant(Mutant::acknowledging_resets) && ask->kind == AskKind::acknowledge) {
    clear(latches, ask->alarm);
  }
  if (mutant(Mutant::shelving_resets) && ask->kind == AskKind::shelve) clear(latches, ask->alarm);
  const bool is_reset = ask->kind == AskKind::reset;
  if (!is_reset && ask->kind != AskKind::confirm) return;

  auto refused = refusal(picture, findings, latches, ask->alarm);
  if (!refused && !is_reset) refused = wrong_confirmation(*ask, picture.now, armed);
  if (refused) {
    effects.push(Answer{ask->ticket, false, *refused});
    return;
  }
  if (is_reset) {
    const Reason why = arm(*ask, picture.now, armed);
    effects.push(Answer{ask->ticket, why.why == Why::armed, why});
    return;
  }
  armed = {};
  clear(latches, ask->alarm);
  effects.push(Persist{});
  effects.push(Answer{ask->ticket, true, because(Why::reset_done)});
}

}  // namespace tidewright::interlock
