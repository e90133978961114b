#include "core/alarm/live.hpp"

#include <algorithm>

#include "core/alarm/flood.hpp"
#include "core/alarm/heed.hpp"
#include "core/alarm/tell.hpp"
#include "core/rules/catalogue.hpp"

namespace tidewright::alarm {
namespace {

using state::Suppression;

// One alarm, and all that acts on it in this step.
struct Case {
  const rules::Rule& rule;
  const room::RuleSettings& settings;
  const state::Findings& findings;
  const state::Latch& latch;
  const state::Circumstances& known;
  Instant now;
  state::Alarms& alarms;
  state::Alarm& alarm;
  Effects& effects;

  bool standing() const { return alarm.active || latch.set; }
  bool heard() const { return alarm.suppression == Suppression::none; }
};

// Three in 10 min or six in a day: the notification is held, not the alarm. An urgent one is
// never held.
bool chatters(const rules::Rule& rule, const state::Finding& finding, Instant now) {
  if (rule.priority == rules::Priority::urgent) return false;
  const auto within = [&](std::size_t nth, Duration span) {
    const Instant at = finding.activations[nth - 1];
    return at != long_ago && now - at <= span;
  };
  return within(3, std::chrono::minutes{10}) || within(6, std::chrono::hours{24});
}

// In a flood only what is urgent; the rest is kept back for the summary.
void tell_raised(Case& c) {
  if (c.rule.priority != rules::Priority::urgent && flooding(c.alarms, c.now)) return;
  announce(c.rule.id, c.alarm, Announced::raised, c.now, c.effects);
}

void raise(Case& c, const Reason& why) {
  state::Alarm& alarm = c.alarm;
  ++alarm.occurrence;
  alarm.acknowledged = false;
  alarm.since = c.now;
  alarm.announced = long_ago;
  alarm.why = why;
  const bool chattering = chatters(c.rule, c.findings[c.rule.id], c.now);
  const bool held = chattering && alarm.chattering;  // the first of them is told, as "x times"
  alarm.chattering = chattering;
  persist(c.effects);
  if (c.heard() && !held) tell_raised(c);
}

void clear(Case& c) {
  c.alarm.active = false;
  persist(c.effects);
  const bool told = c.alarm.announced != long_ago;
  // What belongs into a digest is told once; its end is no news.
  const bool news = c.rule.priority != rules::Priority::days;
  if (c.heard() && told && news) announce(c.rule.id, c.alarm, Announced::cleared, c.now, c.effects);
}

void follow_finding(Case& c) {
  const state::Finding& finding = c.findings[c.rule.id];
  if (finding.active && !c.alarm.active) {
    c.alarm.active = true;
    raise(c, finding.why);
  } else if (!finding.active && c.alarm.active) {
    clear(c);
  } else if (c.latch.set && c.latch.since > c.alarm.since) {
    // A trip without a finding (the records were unreadable), or a new one soon after a reset,
    // while the finding of the first still waits for its end.
    raise(c, c.latch.cause);
  }
  if (finding.active) c.alarm.why = finding.why;
}

Suppression suppression_of(const Case& c) {
  if (!c.settings.in_service && c.rule.may_be_shelved) return Suppression::out_of_service;
  if (c.alarm.suppression == Suppression::shelved && c.now < c.alarm.shelved_until) {
    return Suppression::shelved;
  }
  const auto& root = c.rule.consequence_of;
  return root && c.findings[*root].active ? Suppression::by_design : Suppression::none;
}

void follow_suppression(Case& c) {
  const Suppression next = suppression_of(c);
  if (next == c.alarm.suppression) return;
  c.alarm.suppression = next;
  if (next != Suppression::shelved) c.alarm.shelved_until = never;
  persist(c.effects);
  if (next != Suppression::none) return;
  // What begins or ends in this very step is told by follow_finding.
  const bool standing = (c.alarm.active && c.findings[c.rule.id].active) || c.latch.set;
  c.alarm.acknowledged = !standing;
  if (!standing) return;
  if (c.alarm.announced == long_ago) return tell_raised(c);
  announce(c.rule.id, c.alarm, Announced::reminder, c.now, c.effects);
}

// When it is due again: while nobody has acknowledged it, and long after somebody has. What was
// told before a restart may have been lost on the way; by then the room has spoken.
Instant due_again(const Case& c) {
  constexpr Duration room_has_spoken = std::chrono::minutes{1};
  const state::Alarm& alarm = c.alarm;
  const auto priority = rules::priority_of(c.rule, alarm.why);
  const Duration apart = rules::said_again_after(c.rule, priority, alarm.acknowledged);
  if (alarm.acknowledged) return alarm.acknowledged_at + apart;
  const Instant last = std::max(alarm.announced, alarm.since);
  const Instant due = last + apart;
  return last < c.known.started ? std::min(due, c.known.started + room_has_spoken) : due;
}

void say_again(Case& c, Wake& wake) {
  if (!c.standing() || !c.heard() || !c.known.link_up) return;
  state::Alarm& alarm = c.alarm;
  // The digest reminds of what has days, unless it is to be said more often.
  const bool days = rules::priority_of(c.rule, alarm.why) == rules::Priority::days;
  if (days && c.rule.said_again == Duration{0}) return;
  const Instant due = due_again(c);
  if (c.now < due) return wake.by(due);
  alarm.acknowledged = false;
  persist(c.effects);
  announce(c.rule.id, alarm, Announced::reminder, c.now, c.effects);
  wake.by(due_again(c));
}

}  // namespace

void live(const room::Room& room, const Event& event, const state::Findings& findings,
          const state::Latches& latches, const state::Circumstances& circumstances,
          state::Alarms& alarms, state::Flood& flood, Effects& effects, Wake& wake) {
  const Instant now = circumstances.now;
  if (const auto* ask = std::get_if<Ask>(&event.what)) heed(*ask, now, alarms, effects);
  for (const rules::Rule* rule : rules::catalogue) {
    Case c{*rule,  room.rules[rule->id], findings, latches[rule->id], circumstances, now,
           alarms, alarms[rule->id],     effects};
    follow_suppression(c);
    follow_finding(c);
    say_again(c, wake);
    if (c.alarm.suppression == Suppression::shelved) wake.by(c.alarm.shelved_until);
  }
  tell_kept_back(alarms, flood, now, effects, wake);
}

}  // namespace tidewright::alarm
