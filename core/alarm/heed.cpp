#include "core/alarm/heed.hpp"

#include <algorithm>

#include "core/alarm/tell.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::alarm {
namespace {

using state::Suppression;

void acknowledge_now(state::Alarm& alarm, Instant now) {
  alarm.acknowledged = true;
  alarm.acknowledged_at = now;
}

Reason acknowledge(const Ask& ask, Instant now, state::Alarm& alarm) {
  // A button that was left on a phone must not quiet what came after it.
  if (ask.occurrence != 0 && ask.occurrence != alarm.occurrence) {
    return {Why::old_occurrence, no_subject, {static_cast<float>(alarm.occurrence)}};
  }
  if (alarm.suppression != Suppression::none || alarm.acknowledged) {
    return {Why::nothing_to_acknowledge, no_subject, {}};
  }
  acknowledge_now(alarm, now);
  return {Why::done, no_subject, {}};
}

Reason shelve(const Ask& ask, Instant now, state::Alarm& alarm) {
  const rules::Rule& rule = rules::rule(ask.alarm);
  const Duration longest = rules::shelf_longest(rule.priority);
  if (!rule.may_be_shelved) return {Why::may_not_be_shelved, no_subject, {}};
  if (alarm.suppression != Suppression::none) return {Why::already_shelved, no_subject, {}};
  if (ask.lasting <= Duration{0}) return {Why::needs_minutes, no_subject, {}};
  if (ask.lasting > longest) {
    return {Why::shelved_too_long, no_subject, {static_cast<float>(hours(longest))}};
  }
  alarm.suppression = Suppression::shelved;
  alarm.shelved_until = now + ask.lasting;
  return {Why::done, no_subject, {}};
}

Reason unshelve(Instant now, state::Alarm& alarm) {
  if (alarm.suppression != Suppression::shelved) return {Why::not_shelved, no_subject, {}};
  alarm.shelved_until = now;
  return {Why::done, no_subject, {}};
}

void answer(const Ask& ask, const Reason& why, Effects& effects) {
  const bool done = why.why == Why::done;
  if (done) persist(effects);
  effects.push(Answer{ask.ticket, done, why});
}

bool was_done(const Ask& ask, const Effects& effects) {
  return std::any_of(effects.begin(), effects.end(), [&](const Effect& effect) {
    const auto* answered = std::get_if<Answer>(&effect);
    return answered && answered->ticket == ask.ticket && answered->done;
  });
}

}  // namespace

void heed(const Ask& ask, Instant now, state::Alarms& alarms, Effects& effects) {
  state::Alarm& alarm = alarms[ask.alarm];
  switch (ask.kind) {
    case AskKind::acknowledge:
      return answer(ask, acknowledge(ask, now, alarm), effects);
    case AskKind::shelve:
      return answer(ask, shelve(ask, now, alarm), effects);
    case AskKind::unshelve:
      return answer(ask, unshelve(now, alarm), effects);
    case AskKind::test:
      effects.push(Answer{ask.ticket, true, {Why::done, no_subject, {}}});
      persist(effects);
      effects.push(Announcement{{}, 0, Announced::test, {}});
      return;
    case AskKind::confirm:
      if (was_done(ask, effects)) acknowledge_now(alarm, now);
      return;
    case AskKind::reset:
    case AskKind::start:
    case AskKind::stop:
    case AskKind::bypass:
    case AskKind::confirm_bypass:
    case AskKind::end_bypass:
    case AskKind::test_lease:
      return;
  }
}

}  // namespace tidewright::alarm
