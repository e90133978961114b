#include "core/interlock/reset.hpp"

#include "core/base/mutant.hpp"
#include "core/interlock/arming.hpp"

namespace tidewright::interlock {
namespace {

using room::RuleId;

Reason because(Why why, std::uint8_t subject = no_subject) { return {why, subject, {}}; }

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
  if (mutant(Mutant::reset_by_uncertain) && picture.leak_watch != picture::Watch::good) {
    return std::nullopt;
  }
  // Records that are gone may have held a leak.
  if (alarm == RuleId::leak || alarm == RuleId::records_unreadable) {
    if (const auto wet = not_yet_dry(picture)) return wet;
  }
  if (findings[alarm].raw) return because(Why::cause_still_stands);
  return std::nullopt;
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
    const Reason why = arm(*ask, Why::armed, picture.now, armed);
    effects.push(Answer{ask->ticket, why.why == Why::armed, why});
    return;
  }
  armed = {};
  clear(latches, ask->alarm);
  effects.push(Persist{});
  effects.push(Answer{ask->ticket, true, because(Why::reset_done)});
}

}  // namespace tidewright::interlock
