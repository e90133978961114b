#include "core/interlock/bypass.hpp"

#include <algorithm>

#include "core/base/mutant.hpp"
#include "core/interlock/arming.hpp"
#include "core/interlock/matrix.hpp"

namespace tidewright::interlock {
namespace {

using state::Bypass;
using state::Bypasses;

float in_minutes(Duration span) { return static_cast<float>(seconds(span) / 60); }

// The place of a bypass of that cause, else one that is over; null if every one is taken.
Bypass* place(Bypasses& bypasses, room::CauseId cause, Instant now) {
  Bypass* free = nullptr;
  for (Bypass& bypass : bypasses.items) {
    if (now < bypass.until && bypass.cause == cause) return &bypass;
    if (now >= bypass.until && free == nullptr) free = &bypass;
  }
  return free;
}

std::optional<Reason> refusal(const Ask& ask, Instant now, Bypasses& bypasses) {
  const Duration longest = matrix()[static_cast<std::size_t>(ask.cause)].bypass_longest;
  if (longest <= Duration{0}) return Reason{Why::may_not_be_bypassed, no_subject, {}};
  if (ask.lasting > longest) {
    return Reason{
        Why::value_out_of_range, no_subject, {in_minutes(ask.lasting), 1, in_minutes(longest)}};
  }
  if (place(bypasses, ask.cause, now) != nullptr) return std::nullopt;
  return Reason{Why::too_many_bypasses, no_subject, {static_cast<float>(bypasses.items.size())}};
}

Reason ask_for(const Ask& ask, Instant now, Bypasses& bypasses) {
  if (const auto refused = refusal(ask, now, bypasses)) return *refused;
  const Duration lasting = ask.lasting > Duration{0} ? ask.lasting : bypass_usual;
  const Reason why = arm(ask, Why::bypass_armed, now, bypasses.armed);
  if (why.why == Why::bypass_armed) {
    bypasses.asked = {
        .cause = ask.cause, .since = now, .until = now + lasting, .who = ask.who, .why = ask.why};
  }
  return why;
}

Reason confirm(const Ask& ask, Instant now, Bypasses& bypasses) {
  if (const auto wrong = wrong_confirmation(ask, now, bypasses.armed)) return *wrong;
  Bypass* const free = place(bypasses, ask.cause, now);
  if (free == nullptr) {
    return {Why::too_many_bypasses, no_subject, {static_cast<float>(bypasses.items.size())}};
  }
  const Duration lasting = bypasses.asked.until - bypasses.asked.since;
  *free = bypasses.asked;
  free->since = now;
  free->until = mutant(Mutant::bypass_never_ends) ? never : now + lasting;
  bypasses.asked = {};
  bypasses.armed = {};
  return {Why::bypassed,
          no_subject,
          {static_cast<float>(static_cast<std::size_t>(ask.cause)), in_minutes(lasting)}};
}

Reason end(const Ask& ask, Instant now, Bypasses& bypasses) {
  for (Bypass& bypass : bypasses.items) {
    if (bypass.cause != ask.cause || now >= bypass.until) continue;
    bypass.until = now;
    return {Why::done, no_subject, {}};
  }
  return {Why::not_bypassed, no_subject, {}};
}

// A deliberate mistake: what is shelved trips no more.
void bypass_shelved(const Ask& ask, Instant now, Bypasses& bypasses) {
  for (const Row& row : matrix()) {
    if (row.rule != ask.alarm) continue;
    Bypass* const free = place(bypasses, row.id, now);
    if (free == nullptr) return;
    free->cause = row.id;
    free->since = now;
    free->until = now + ask.lasting;
  }
}

void take(const Ask& ask, Instant now, Bypasses& bypasses, Effects& effects, Wake& wake) {
  Reason why;
  switch (ask.kind) {
    case AskKind::bypass:
      why = ask_for(ask, now, bypasses);
      break;
    case AskKind::confirm_bypass:
      why = confirm(ask, now, bypasses);
      break;
    case AskKind::end_bypass:
      why = end(ask, now, bypasses);
      break;
    default:
      return;
  }
  const bool done =
      why.why == Why::bypass_armed || why.why == Why::bypassed || why.why == Why::done;
  effects.push(Answer{ask.ticket, done, why});
  // Rules look at the bypasses of the step before.
  wake.by(now + Duration{1});
}

}  // namespace

void bypass(const picture::Picture& picture, const Event& event, Bypasses& bypasses,
            Effects& effects, Wake& wake) {
  const bool starts = std::holds_alternative<Started>(event.what);
  if (starts && !mutant(Mutant::bypass_outlives_restart)) bypasses = {};
  if (const auto* ask = std::get_if<Ask>(&event.what)) {
    take(*ask, picture.now, bypasses, effects, wake);
    if (mutant(Mutant::shelving_bypasses) && ask->kind == AskKind::shelve) {
      bypass_shelved(*ask, picture.now, bypasses);
    }
  }
  for (const Bypass& each : bypasses.items) {
    if (picture.now < each.until) wake.by(each.until);
  }
}

}  // namespace tidewright::interlock
