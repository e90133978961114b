#include "core/procedure/attended.hpp"

#include "core/procedure/held_by_latch.hpp"

namespace tidewright::procedure {
namespace {

float in_minutes(Duration span) { return static_cast<float>(seconds(span) / 60); }

std::optional<Reason> refusal(const picture::Picture& picture, const Ask& ask) {
  const room::Role role = picture.room.actuators[ask.actuator].role;
  if (facts(role).makes_water) return Reason{Why::goes_with_make_water, ask.actuator, {}};
  if (ask.kind == AskKind::stop) return std::nullopt;
  if (const auto latch = held_by_latch(picture.latches, role)) return latch;
  if (ask.lasting <= Duration{0}) return Reason{Why::needs_minutes, no_subject, {}};
  if (ask.lasting <= attended_longest) return std::nullopt;
  return Reason{Why::value_out_of_range,
                no_subject,
                {in_minutes(ask.lasting), 1, in_minutes(attended_longest)}};
}

void take(const picture::Picture& picture, const Ask& ask, state::AttendedRuns& runs,
          Effects& effects) {
  const bool start = ask.kind == AskKind::start;
  if ((!start && ask.kind != AskKind::stop) || ask.actuator == no_subject) return;
  if (const auto refused = refusal(picture, ask)) {
    effects.push(Answer{ask.ticket, false, *refused});
    return;
  }
  const Why why = start ? Why::asked_to_start : Why::asked_to_stop;
  runs[ask.actuator] = {.since = picture.now,
                        .until = start ? picture.now + ask.lasting : picture.now,
                        .why = {why, no_subject, {start ? in_minutes(ask.lasting) : 0}}};
  effects.push(Answer{ask.ticket, true, runs[ask.actuator].why});
}

void end_when_due(const picture::Picture& picture, room::Role role, state::Attended& run,
                  Wake& wake) {
  if (run.why.why != Why::asked_to_start) return;
  if (const auto latch = held_by_latch(picture.latches, role)) {
    run = {.since = run.since, .until = picture.now, .why = *latch};
  } else if (picture.now >= run.until) {
    run.why = {Why::time_is_up, no_subject, {in_minutes(run.until - run.since)}};
  } else {
    wake.by(run.until);
  }
}

}  // namespace

void attended(const picture::Picture& picture, const Event& event, state::AttendedRuns& runs,
              Effects& effects, Wake& wake) {
  if (std::holds_alternative<Started>(event.what)) runs = {};
  if (const auto* ask = std::get_if<Ask>(&event.what)) take(picture, *ask, runs, effects);
  for (std::size_t i = 0; i < picture.room.actuators.size(); ++i) {
    end_when_due(picture, picture.room.actuators[i].role, runs[i], wake);
  }
}

}  // namespace tidewright::procedure
